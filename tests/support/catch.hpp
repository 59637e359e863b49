// Catch2, version 2 or 3, behind one door: tests include this and nothing of Catch2's.
#pragma once

#if __has_include(<catch2/catch_test_macros.hpp>)
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
