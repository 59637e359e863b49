#include "ellipse.hpp"

#include <algorithm>
#include <numbers>

namespace basinwright::shell::geometry {

namespace {

// Carlson, Numerical Algorithms 10 (1995): both symmetric integrals from one duplication loop.
struct Carlson {
  double rf;
  double rd;
};

Carlson carlson(double x, double y, double z) {
  constexpr double small_enough = 1e-3;  // the fifth-order tail is below 1e-16 of the value
  double sum = 0.0;
  double power = 1.0;
  double dx = 1.0;
  double dy = 1.0;
  double dz = 1.0;
  double mean = 1.0;
  for (int i = 0; i < 60; ++i) {
    mean = (x + y + z) / 3.0;
    const double mean_d = (x + y + 3.0 * z) / 5.0;
    dx = (mean_d - x) / mean_d;
    dy = (mean_d - y) / mean_d;
    dz = (mean_d - z) / mean_d;
    if (std::max({std::abs(dx), std::abs(dy), std::abs(dz)}) < small_enough) break;
    const double rx = std::sqrt(x);
    const double ry = std::sqrt(y);
    const double rz = std::sqrt(z);
    const double lambda = rx * ry + rx * rz + ry * rz;
    sum += power / (rz * (z + lambda));
    power *= 0.25;
    x = 0.25 * (x + lambda);
    y = 0.25 * (y + lambda);
    z = 0.25 * (z + lambda);
  }
  const double mean_d = (x + y + 3.0 * z) / 5.0;
  const double ea = dx * dy;
  const double eb = dz * dz;
  const double ec = ea - eb;
  const double ed = ea - 6.0 * eb;
  const double ee = ed + ec + ec;
  const double rd =
      3.0 * sum + power *
                      (1.0 + ed * (-3.0 / 14.0 + 9.0 / 88.0 * ed - 4.5 / 26.0 * dz * ee) +
                       dz * (ee / 6.0 + dz * (-9.0 / 22.0 * ec + dz * 3.0 / 26.0 * ea))) /
                      (mean_d * std::sqrt(mean_d));
  const double fx = (mean - x) / mean;
  const double fy = (mean - y) / mean;
  const double fz = -fx - fy;
  const double e2 = fx * fy - fz * fz;
  const double e3 = fx * fy * fz;
  const double rf = (1.0 + (e2 / 24.0 - 0.1 - 3.0 * e3 / 44.0) * e2 + e3 / 14.0) / std::sqrt(mean);
  return {rf, rd};
}

// |phi| <= pi/2
double principal_e(double phi, double m) {
  const double s = std::sin(phi);
  const double c = std::cos(phi);
  const Carlson r = carlson(c * c, 1.0 - m * s * s, 1.0);
  return s * (r.rf - m * s * s * r.rd / 3.0);
}

// Antiderivatives of cos t |p'| and sin t |p'|.
Vec weighted_speed(const EllipseFrame& e, double t) {
  const double k = e.a * e.a - e.b * e.b;
  const double u = std::sin(t);
  const double v = std::cos(t);
  const double ru = std::sqrt(e.b * e.b + k * u * u);
  const double rv = std::sqrt(e.a * e.a - k * v * v);
  if (k == 0.0) return {e.a * u, -e.a * v};
  const double r = std::sqrt(std::abs(k));
  const double wu = u * r / e.b;
  const double wv = v * r / e.a;
  const double tail_u =
      e.b * e.b / r * (k > 0.0 ? std::asinh(wu) : std::asin(std::clamp(wu, -1.0, 1.0)));
  const double tail_v =
      e.a * e.a / r * (k > 0.0 ? std::asin(std::clamp(wv, -1.0, 1.0)) : std::asinh(wv));
  return {0.5 * (u * ru + tail_u), -0.5 * (v * rv + tail_v)};
}

}  // namespace

double elliptic_e(double phi, double m) {
  const double turns = std::round(phi / std::numbers::pi);
  const double rest = principal_e(phi - turns * std::numbers::pi, m);
  return turns == 0.0 ? rest : rest + 2.0 * turns * principal_e(std::numbers::pi / 2.0, m);
}

Vec EllipseFrame::at(double t) const {
  return centre + a * std::cos(t) * axis + b * std::sin(t) * left(axis);
}

Vec EllipseFrame::speed(double t) const {
  return -a * std::sin(t) * axis + b * std::cos(t) * left(axis);
}

Vec EllipseFrame::local(Vec p) const {
  return {dot(p - centre, axis), dot(p - centre, left(axis))};
}

double EllipseFrame::curvature(double t) const {
  const double v = norm(speed(t));
  return a * b / (v * v * v);
}

Moments ellipse_moments(const EllipseFrame& e, double t0, double t1) {
  const double s = std::sin(t1) - std::sin(t0);
  const double c = std::cos(t1) - std::cos(t0);
  const double span = t1 - t0;
  const double wave = (std::sin(2.0 * t1) - std::sin(2.0 * t0)) / 4.0;
  const double cos2 = span / 2.0 + wave;
  const double sin2 = span / 2.0 - wave;
  const double both =
      0.5 * (std::sin(t1) * std::sin(t1) - std::sin(t0) * std::sin(t0));  // int sin cos
  const Vec m = e.local({0.0, 0.0});
  const double c1 = -m.x;
  const double c2 = -m.y;
  const double ab = e.a * e.b;
  // cross(p, p') = ab + c1 b cos t + c2 a sin t, over the fan from the origin
  const double sweep = ab * span + c1 * e.b * s - c2 * e.a * c;
  const double along = c1 * sweep + e.a * (ab * s + c1 * e.b * cos2 + c2 * e.a * both);
  const double aside = c2 * sweep + e.b * (-ab * c + c1 * e.b * both + c2 * e.a * sin2);
  return {sweep / 2.0, along / 3.0 * e.axis + aside / 3.0 * left(e.axis)};
}

double ellipse_length(const EllipseFrame& e, double t0, double t1) {
  if (e.a >= e.b) {
    const double m = 1.0 - (e.b / e.a) * (e.b / e.a);
    const double quarter = std::numbers::pi / 2.0;
    return e.a * (elliptic_e(t1 - quarter, m) - elliptic_e(t0 - quarter, m));
  }
  const double m = 1.0 - (e.a / e.b) * (e.a / e.b);
  return e.b * (elliptic_e(t1, m) - elliptic_e(t0, m));
}

Vec ellipse_line_moment(const EllipseFrame& e, double t0, double t1) {
  const Vec w = weighted_speed(e, t1) - weighted_speed(e, t0);
  return ellipse_length(e, t0, t1) * e.centre + e.a * w.x * e.axis + e.b * w.y * left(e.axis);
}

std::vector<double> ellipse_cuts(const EllipseFrame& e,
                                 double t0,
                                 double t1,
                                 const HalfPlane& line) {
  const double p = e.a * dot(line.normal, e.axis);
  const double q = e.b * dot(line.normal, left(e.axis));
  const double r = -line.at(e.centre);
  const double under = p * p + q * q - r * r;
  if (under <= 0.0) return {};
  const double turn = 2.0 * std::numbers::pi;
  const double lead = std::atan2(q, p);
  const double swing = std::atan2(std::sqrt(under), r);
  std::vector<double> cuts;
  for (const double root : {lead - swing, lead + swing}) {
    for (double t = root - turn * std::floor((root - t0) / turn); t < t1; t += turn) {
      if (t > t0) cuts.push_back(t);
    }
  }
  std::ranges::sort(cuts);
  return cuts;
}

}  // namespace basinwright::shell::geometry
