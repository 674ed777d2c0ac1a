#pragma once

#include <string>

#include "catch.hpp"

/// Matcher for a message that contains a text; Catch2 2 and 3 name it differently.
inline auto mentions(const std::string& text) {
#if CATCH_VERSION_MAJOR >= 3
  return Catch::Matchers::ContainsSubstring(text);
#else
  return Catch::Matchers::Contains(text);
#endif
}
