#include "kettlecast/transfer/room_air.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("free convection from a hot steel plate in a room") {
  // 1100 degF in a room of 70 degF.
  const double difference = (1100.0 - 70.0) / 1.8;
  check_relative(room_air_coefficient(difference, room_air::vertical) / 5.678263341,
                 published(1.699536753, "Btu/(h ft2 degF)", "Kern, example 18.4"), 1e-2);
}

TEST_CASE("room air grows with the difference and stays positive without one") {
  sweep::rising(-1.0, 100.0, [](double d) { return room_air_coefficient(d, room_air::vertical); });
  sweep::positive(-50.0, 50.0,
                  [](double d) { return room_air_coefficient(d, room_air::facing_down); });
  CHECK(room_air::facing_up > room_air::vertical);
  CHECK(room_air::vertical > room_air::facing_down);
}
