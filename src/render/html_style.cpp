#include "html_style.hpp"

#include <fmt/format.h>

#include "display_width.hpp"
#include "utf8.hpp"

namespace basinwright::render {
namespace {

// Ink on paper: everything said by colour is said by weight, rule or sign as well, since site
// printers have one colour. Sizes follow the reader's own.
constexpr std::string_view ordinary = R"css(
:root{--ink:#16202a;--soft:#4a5763;--rule:#c3ccd3;--strong:#16202a;--accent:#0b4a63;--tint:#f1f5f7;color-scheme:light}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:#fff;color:var(--ink);font:1rem/1.55 sans-serif;overflow-wrap:break-word}
.page{max-width:58rem;margin:0 auto;padding:2.5rem 1.5rem 4rem}
.skip{position:absolute;left:-99rem}
.skip:focus{left:1rem;top:1rem;background:#fff;padding:.75rem 1rem;outline:3px solid var(--accent);z-index:1}
h1,h2,h3{line-height:1.2;text-wrap:balance}
h1{font-size:2.25rem;letter-spacing:-.01em;margin:0}
h2{font-size:1.4rem;margin:0 0 1rem}
h3{font-size:1.1rem;margin:0 0 .75rem}
p,ul,ol,dl,table,figure,details{margin:0 0 1.25rem}
ul,ol{padding-left:1.3rem}
a{color:var(--accent);text-underline-offset:.15em}
a:focus-visible,summary:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
.subtitle{color:var(--soft);margin:.5rem 0 0}
.bottom{border-top:3px solid var(--strong);border-bottom:1px solid var(--rule);padding:.75rem 0;margin:1.5rem 0;font-size:1.2rem;font-weight:600}
.notices{list-style:none;padding:0;margin:0 0 1.5rem}
.notices li{border-left:4px solid var(--accent);padding:.1rem 0 .1rem .9rem;margin:0 0 .6rem}
nav ol{list-style:none;padding:0;margin:0 0 1rem;display:flex;flex-wrap:wrap;gap:.25rem 1.25rem}
nav a{display:inline-block;padding:.3rem 0}
section{margin-top:3rem;scroll-margin-top:1rem}
section.under{margin-top:2rem}
.facts{display:grid;gap:0}
.facts>div{display:grid;grid-template-columns:minmax(9rem,18rem) 1fr;gap:0 1.5rem;padding:.35rem 0;border-top:1px solid var(--rule);break-inside:avoid}
.facts>div:last-child{border-bottom:1px solid var(--rule)}
dt{color:var(--soft)}
dd{margin:0;grid-column:2}
dl.sums>div{grid-template-columns:1fr auto}
dl.sums{max-width:32rem}
dl.sums dd{text-align:right;font-variant-numeric:tabular-nums}
.total dt,.total dd,tr.total>*{font-weight:700;color:var(--ink)}
table{width:100%;border-collapse:collapse;font-variant-numeric:tabular-nums lining-nums}
caption{text-align:left;font-weight:600;padding:0 0 .6rem;break-after:avoid}
th,td{text-align:left;vertical-align:top;padding:.5rem 1rem .5rem 0;border-bottom:1px solid var(--rule)}
th:last-child,td:last-child{padding-right:0}
thead th,thead td{font-size:.85rem;font-weight:600;color:var(--soft);vertical-align:bottom;border-bottom:2px solid var(--strong)}
table.narrow{width:auto;min-width:min(100%,32rem)}
tbody th{font-weight:500}
tbody tr.group>*{font-weight:700;padding-top:1.1rem}
tr.total>*{border-top:2px solid var(--strong)}
tr.total+tr.total>*{border-top:0}
td.n,th.n,dd.n{text-align:right;white-space:nowrap}
td.n:not(:last-child),th.n:not(:last-child){padding-right:1.75rem}
.k{white-space:nowrap}
dd.n{text-align:left}
p.heading{font-weight:600;break-after:avoid}
.caution,.stop{font-weight:600}
p.caution,li.caution,p.stop,li.stop{border-left:4px solid var(--strong);padding:.15rem 0 .15rem .9rem;list-style:none;break-inside:avoid}
li.caution,li.stop{margin-left:-1.3rem}
p.stop,li.stop{border:3px solid var(--strong);padding:.75rem 1rem}
.mark{font-weight:800}
.assumed{font-style:italic}
.muted{color:var(--soft)}
.good{font-weight:600}
ul.plain{list-style:none;padding:0}
li{margin:0 0 .4rem;break-inside:avoid}
.ticks{list-style:none;padding:0}
.ticks li{display:grid;grid-template-columns:auto 1fr;gap:.75rem;align-items:start}
.box{display:inline-block;width:5.5mm;height:5.5mm;border:.5mm solid var(--strong);border-radius:.4mm;vertical-align:-.9mm;flex:none}
td.tick{white-space:nowrap}
.line{display:inline-block;min-width:4.5em;width:60%;border-bottom:.35mm solid var(--strong);height:1.3em;vertical-align:baseline}
td.blank{min-width:5em}
td.blank .line{width:calc(100% - 3.2em);min-width:2.5em}
td.blank.bare .line{width:100%}
dd.blank .line{border-bottom:0;width:100%}
figure svg{display:block;max-width:100%;height:auto}
figcaption{color:var(--soft);margin-top:.5rem}
summary{cursor:pointer;padding:.5rem 0}
details h2{display:inline}
.beside,.beside details{margin:0}
.beside summary{padding:0;font-size:.875rem;color:var(--soft)}
.how,.how>summary{margin:0;padding:0}
.how>summary{list-style:none;text-decoration:underline dotted var(--soft);text-underline-offset:.2em}
.how>summary::-webkit-details-marker{display:none}
table:has(.how){position:relative}
.how>div{position:absolute;z-index:1;left:0;right:0;min-width:min(30rem,86vw);padding:.75rem 1rem 0;border:1px solid var(--soft);background:#fff;text-align:left;font-size:.875rem;font-weight:400;white-space:normal}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.site{font-size:1.15rem;line-height:1.5}
.site h2{font-size:1.7rem;border-bottom:3px solid var(--strong);padding-bottom:.4rem}
.site h3{font-size:1.3rem}
.site td,.site th{padding-top:.65rem;padding-bottom:.65rem;vertical-align:baseline}
.site thead th,.site thead td{font-size:1rem;vertical-align:bottom}
.site .box{width:7mm;height:7mm;vertical-align:-1.4mm}
.site .line{height:1.7em}
.site table.narrow{width:100%}
.site tr:has(td.blank)>*{vertical-align:bottom}
@media screen and (max-width:40rem){
.page{padding:1.25rem 1rem 3rem}
tbody th{overflow-wrap:anywhere}
h1{font-size:1.75rem}
.facts>div{grid-template-columns:1fr}
dd{grid-column:1}
dl.sums dd{grid-column:2}
table.wide,table.wide tbody,table.wide tr,table.wide th,table.wide td{display:block;width:auto;text-align:left;white-space:normal;border:0;padding:.1rem 0}
table.wide thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
table.wide caption{display:block}
table.wide tr{border-bottom:1px solid var(--rule);padding:.6rem 0}
table.wide tbody th{font-weight:700}
table.wide td[data-title]:not(.empty)::before{content:attr(data-title) ": ";color:var(--soft);font-weight:400}
table.wide td.empty{display:none}
.how>div{position:static;min-width:0;padding:.5rem 0 0;border:0}
td.blank .line{width:60%}
}
@media print{
:root{--soft:#333;--rule:#999;--accent:#000;--ink:#000;--strong:#000}
body{font-size:9.5pt;line-height:1.42}
.page{max-width:none;padding:0}
nav,.skip,details:not([open]):not(.how),.how>div{display:none}
.how>summary{text-decoration:none}
h1{font-size:21pt}
h2{font-size:13pt}
h3{font-size:10.5pt}
h2,h3,caption,thead{break-after:avoid}
p,ul,ol,dl,table{margin-bottom:4mm}
h2{margin-bottom:3mm}
li{margin-bottom:.9mm}
section{margin-top:6.5mm}
section.under{margin-top:5mm}
section.page-start{break-before:page;margin-top:0}
tr,.facts>div{break-inside:avoid}
tr.total{break-before:avoid}
tr:has(+tr.total){break-after:avoid}
table.short,dl:not(:has(>:nth-child(15))){break-inside:avoid}
section:last-of-type:not(.page-start):has(dd.blank){break-before:avoid;break-inside:avoid}
section:has(+section:last-of-type:not(.page-start) dd.blank){break-inside:avoid}
.room{height:32mm;margin-bottom:-32mm;break-inside:avoid;break-after:avoid}
.sheets>h2,.sheets>h3{display:none}
.sheets{margin:0}
thead{display:table-header-group}
th,td{padding-top:1.3mm;padding-bottom:1.3mm}
.room+table th,.room+table td{padding-top:.9mm;padding-bottom:.9mm}
.facts>div{padding:1mm 0;grid-template-columns:52mm 1fr}
dl.sums>div{grid-template-columns:1fr auto}
.facts>div:has(dd.blank){padding-top:2.6mm}
p{orphans:3;widows:3}
a{color:inherit;text-decoration:none}
.site{font-size:13pt;line-height:1.35}
.site h1{font-size:25pt}
.site h2{font-size:19pt}
.site h3{font-size:15pt;margin-bottom:1.5mm}
.site p.heading{margin-bottom:2mm}
.site p,.site dl,.site ul,.site table{margin-bottom:3mm}
.site section.under{margin-top:4mm}
.site .box{width:6mm;height:6mm;vertical-align:-1.1mm}
.site p.caution{margin-bottom:1.8mm}
.site th,.site td{padding-top:1.5mm;padding-bottom:1.5mm}
.site thead th,.site thead td{font-size:12pt}
.site .facts>div{padding:1.1mm 0;grid-template-columns:62mm 1fr}
.site li{margin-bottom:1.1mm}
.site section:not(.under),.site .ticks,.site table{break-inside:avoid}
.site .room{display:none}
.site p{break-inside:avoid}
.site p:not(:last-child){break-after:avoid}
.site .page-start:has(+.under){break-after:avoid}
.site .page-start:not(:has(+.under)){font-size:12pt;line-height:1.3}
.site .page-start:not(:has(+.under)) li{margin-bottom:.8mm}
.site .page-start:not(:has(+.under)) tbody>tr>*{padding-top:1.1mm;padding-bottom:1.1mm}
.site .page-start:not(:has(+.under)) .box{height:5mm;width:5mm;vertical-align:-.9mm}
.site .under>:has(~.ticks){break-after:avoid}
.site .under:has(+.page-start)>table:last-child{break-before:avoid}
figure.sheet{margin:0;overflow:hidden;break-after:page;break-before:page}
figure.sheet svg{max-width:none}
figure.sheet figcaption{display:none}
figure{break-inside:avoid}
}
)css";

/// A text as a CSS string: all but letters, digits and spaces by number (CSS Syntax 4.3.7), so that
/// no name can end the string or the element it stands in.
std::string css_string(std::string_view text) {
  constexpr std::size_t widest = 90;
  std::string out;
  std::size_t width = 0;
  bool after_number = false;
  for (std::size_t at = 0; at < text.size();) {
    const Scalar scalar = scalar_at(text, at);
    at += scalar.length;
    const char32_t c = scalar.value < U' ' ? U' ' : scalar.value;
    width += display_width(c);
    if (width > widest) return out + "\\002026";
    const bool letter =
        (c >= U'0' && c <= U'9') || (c >= U'A' && c <= U'Z') || (c >= U'a' && c <= U'z');
    // A space after a number belongs to the number.
    const bool plain = letter || (c == U' ' && !after_number);
    out += plain ? std::string(1, static_cast<char>(c))
                 : fmt::format("\\{:06x}", static_cast<std::uint32_t>(c));
    after_number = !plain;
  }
  return out;
}

/// Margins are the printer's affair on an ordinary page; a drawing brings its own.
std::string pages(std::string_view size,
                  std::string_view width,
                  std::string_view height,
                  std::string_view foot) {
  constexpr std::string_view none = "@bottom-left{content:none}@bottom-right{content:none}";
  std::string out = fmt::format(
      "@page{{size:{};margin:14mm 15mm 15mm;@bottom-left{{content:\"{}\";font:8pt "
      "sans-serif;white-space:nowrap}}@bottom-right{{content:counter(page) \" / \" "
      "counter(pages);font:8pt sans-serif}}}}\n",
      size,
      css_string(foot));
  out.append("@page upright{size:").append(size).append(";margin:0;").append(none).append("}\n");
  out.append("@page across{size:")
      .append(size)
      .append(" landscape;margin:0;")
      .append(none)
      .append("}\n");
  // A hair less than the page, or rounding would add an empty one.
  out.append("@media print{figure.upright{page:upright;width:")
      .append(width)
      .append(";height:calc(")
      .append(height)
      .append(" - 1px)}figure.across{page:across;width:")
      .append(height)
      .append(";height:calc(")
      .append(width)
      .append(" - 1px)}}\n");
  return out;
}

}  // namespace

std::string html_style(document::Paper paper, std::string_view foot) {
  const bool letter = paper == document::Paper::letter;
  return std::string(ordinary) + (letter ? pages("letter", "215.9mm", "279.4mm", foot)
                                         : pages("A4", "210mm", "297mm", foot));
}

}  // namespace basinwright::render
