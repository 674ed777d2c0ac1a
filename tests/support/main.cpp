// Main function of the tests under Catch2 version 2; version 3 links its own (Catch2WithMain).
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
