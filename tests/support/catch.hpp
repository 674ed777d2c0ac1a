#pragma once

/// One include for Catch2 version 2 (single header) and version 3. Comparisons go through
/// Catch::Matchers::WithinRel and WithinAbs, which both versions spell alike.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
#else
#include <catch2/catch.hpp>
#endif
