# How every file of ours is compiled: warnings, sanitizers.
add_library(basinwright_options INTERFACE)
target_include_directories(basinwright_options INTERFACE $<BUILD_INTERFACE:${CMAKE_SOURCE_DIR}/include>)
# Contracted multiply-adds would let two compilers print different last digits.
set(flags
  -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -ffp-contract=off
  # A file's own names may be a local's in another file of its room.
  $<$<NOT:$<BOOL:${BASINWRIGHT_TOGETHER}>>:-Wshadow>
  # Designated initialisers leave members out on purpose.
  -Wno-missing-field-initializers
  # ccache needs this to see a precompiled header.
  $<$<CXX_COMPILER_ID:GNU>:-fpch-preprocess>
  # g++ 12 sees overlaps and overflows in "x" + std::string that are not there, the more so in precompiled headers.
  "$<$<CXX_COMPILER_ID:GNU>:-Wno-restrict;-Wno-stringop-overflow;-Wno-array-bounds>"
  $<$<BOOL:${BASINWRIGHT_WERROR}>:-Werror>)
target_compile_options(basinwright_options INTERFACE "$<BUILD_INTERFACE:${flags}>")
if(BASINWRIGHT_SANITIZE)
  target_compile_options(basinwright_options INTERFACE
    -fsanitize=${BASINWRIGHT_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(basinwright_options INTERFACE -fsanitize=${BASINWRIGHT_SANITIZE})
endif()
