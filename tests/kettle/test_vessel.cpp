#include <algorithm>
#include <limits>
#include <random>
#include <vector>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/kettle/vessel.hpp"
#include "message.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double pi = constants::pi;

VesselShape shape_of(FloorShape floor, double depth, double tilt) {
  return {floor, 0.8, 0.6, depth, tilt};
}

/// One vessel of each kind of floor, upright and tilted so little and so far that the lowest point
/// lies on the floor or at its rim.
std::vector<VesselShape> all_kinds() {
  std::vector<VesselShape> shapes;
  for (const double tilt : {0.0, 0.02, 0.3, 1.0}) {
    shapes.push_back(shape_of(FloorShape::flat, 0.0, tilt));
    shapes.push_back(shape_of(FloorShape::dished, 0.05, tilt));
    shapes.push_back(shape_of(FloorShape::dished, 0.0, tilt));
    shapes.push_back(shape_of(FloorShape::hemispherical, 0.0, tilt));
  }
  return shapes;
}

/// Volume and wetted floor area by adding up rings of the floor, each wet over a known angle.
struct Rings {
  double volume = 0.0, floor_area = 0.0;
};

Rings add_rings(double radius, double sphere, double slope, double level) {
  const int count = 200000;
  const double widest = std::asin(radius / sphere);
  Rings sum;
  for (int i = 0; i < count; ++i) {
    const double angle = widest * (i + 0.5) / count;
    const double r = sphere * std::sin(angle);
    const double above = level - sphere * (1.0 - std::cos(angle));
    const double half = std::acos(std::clamp(-above / (slope * r), -1.0, 1.0));
    const double strip = sphere * widest / count;
    sum.floor_area += 2.0 * half * r * strip;
    sum.volume += 2.0 * (above * half + slope * r * std::sin(half)) * r * strip * std::cos(angle);
  }
  return sum;
}

}  // namespace

TEST_CASE("a hemispherical floor holds half a ball") {
  const auto shape = shape_of(FloorShape::hemispherical, 0.0, 0.0);
  check_relative(volume_at_level(shape, 0.4),
                 published(0.13404128655, "m3", "2/3 pi R^3 with R = 0.4 m, Archimedes"), 1e-10);
  check_relative(floor_total_area(shape),
                 published(1.00530964915, "m2", "2 pi R^2 with R = 0.4 m, Archimedes"), 1e-11);
  check_relative(capacity(shape),
                 published(0.43563418129, "m3", "2/3 pi R^3 + pi R^2 H, R = 0.4 m, H = 0.6 m"),
                 1e-10);
}

TEST_CASE("a dished floor is part of a sphere") {
  // Other forms than the code's: V = pi h (3 a^2 + h^2)/6, A = 2 pi rho h, chord theorem for a.
  // Source: Harris & Stocker (1998), section 4.8.4, spherical segment (from memory).
  const double R = 0.4, d = 0.12;
  const auto shape = shape_of(FloorShape::dished, d, 0.0);
  const double rho = (R * R / d + d) / 2.0;
  for (const double h : {0.01, 0.05, 0.12}) {
    const double a = std::sqrt(h * (2.0 * rho - h));
    const double volume = pi * h * (3.0 * a * a + h * h) / 6.0;
    const auto wet = wetting(shape, volume);
    CHECK_THAT(wet.level, WithinRel(h, 1e-12));
    CHECK_THAT(wet.floor_area, WithinRel(2.0 * pi * rho * h, 1e-12));
    CHECK_THAT(wet.surface_area, WithinRel(pi * a * a, 1e-12));
    CHECK_THAT(wet.wall_area, WithinAbs(0.0, 1e-12));
  }
  const auto full = wetting(shape, capacity(shape));
  CHECK_THAT(full.level, WithinRel(d + 0.6, 1e-12));
  CHECK_THAT(full.wall_area, WithinRel(2.0 * pi * R * 0.6, 1e-12));
  CHECK_THAT(full.floor_area, WithinRel(floor_total_area(shape), 1e-12));
}

TEST_CASE("a dish without a depth has the usual one") {
  check_relative(volume_to_cover({FloorShape::dished, 1.0, 0.5, 0.0, 0.0}, 0.1935, 0.0),
                 published(0.0797867, "m3", "cap of depth 0.1935 m (DIN 28011, from memory), 1 m"),
                 1e-4);
}

TEST_CASE("an upright flat kettle is a plain cylinder") {
  const auto shape = shape_of(FloorShape::flat, 0.0, 0.0);
  const auto wet = wetting(shape, 0.1);
  CHECK_THAT(wet.level, WithinRel(0.1 / (pi * 0.16), 1e-14));
  CHECK_THAT(wet.floor_area, WithinRel(pi * 0.16, 1e-14));
  CHECK_THAT(wet.wall_area, WithinRel(4.0 * 0.1 / 0.8, 1e-14));
  CHECK_THAT(wet.wall_area_per_volume, WithinRel(4.0 / 0.8, 1e-14));
  CHECK_THAT(wet.surface_area, WithinRel(pi * 0.16, 1e-14));
}

TEST_CASE("the hoof of Archimedes") {
  // Surface through the middle of a flat floor: V = 2/3 R^2 H, curved area 2 R H, H = R tan(tilt).
  const double R = 0.4, tilt = 0.5;
  const double H = R * std::tan(tilt);
  const auto shape = shape_of(FloorShape::flat, 0.0, tilt);
  const double volume = 2.0 / 3.0 * R * R * H;
  CHECK_THAT(volume_at_level(shape, 0.0), WithinRel(volume, 1e-12));
  const auto wet = wetting(shape, volume);
  CHECK_THAT(wet.level, WithinAbs(0.0, 1e-12));
  CHECK_THAT(wet.wall_area, WithinRel(2.0 * R * H, 1e-11));
  CHECK_THAT(wet.floor_area, WithinRel(pi * R * R / 2.0, 1e-11));
  CHECK_THAT(wet.surface_area, WithinRel(pi * R * R / 2.0 / std::cos(tilt), 1e-11));
}

TEST_CASE("a hoof with any chord") {
  // V = H/(3b) [a (3R^2 - a^2) + 3 R^2 (b - R) phi], curved area 2 R H/b [(b - R) phi + a] with
  // half chord a, height b of the wet segment and H of the hoof. Source: Harris & Stocker (1998),
  // section 4.6.3, segment of a cylinder (from memory).
  const double R = 0.4, tilt = 0.3;
  const auto shape = shape_of(FloorShape::flat, 0.0, tilt);
  for (const double b : {0.1, 0.3, 0.4, 0.6, 0.75}) {
    const double H = b * std::tan(tilt);
    const double a = std::sqrt(b * (2.0 * R - b));
    const double phi = std::acos(1.0 - b / R);
    const double volume = H / (3.0 * b) * (a * (3.0 * R * R - a * a) + 3.0 * R * R * (b - R) * phi);
    const auto wet = wetting(shape, volume);
    CHECK_THAT(wet.level, WithinAbs((b - R) * std::tan(tilt), 1e-10));
    CHECK_THAT(wet.wall_area, WithinRel(2.0 * R * H / b * ((b - R) * phi + a), 1e-9));
    CHECK_THAT(wet.floor_area, WithinRel(R * R * phi - (R - b) * a, 1e-9));
  }
}

TEST_CASE("a tilted kettle whose floor is covered has its mean level on the axis") {
  // Obliquely cut cylinder: V = pi R^2 (h1 + h2)/2, curved area pi R (h1 + h2).
  const double R = 0.4, tilt = 0.2, rise = 2.0 * R * std::tan(tilt);
  const auto shape = shape_of(FloorShape::flat, 0.0, tilt);
  const double short_side = 0.6 - rise;
  const double volume = pi * R * R * (short_side + 0.6) / 2.0;
  CHECK_THAT(capacity(shape), WithinRel(volume, 1e-12));
  const auto wet = wetting(shape, volume);
  CHECK_THAT(wet.level, WithinRel((short_side + 0.6) / 2.0, 1e-12));
  CHECK_THAT(wet.wall_area, WithinRel(pi * R * (short_side + 0.6), 1e-12));
  CHECK_THAT(wet.surface_area, WithinRel(pi * R * R / std::cos(tilt), 1e-12));
}

TEST_CASE("product within a tilted hemisphere is a cap of the same ball") {
  const double R = 0.4, height = 0.1;
  const auto shape = shape_of(FloorShape::hemispherical, 0.0, 0.4);
  const auto wet = wetting(shape, pi * height * height * (3.0 * R - height) / 3.0);
  CHECK_THAT(wet.floor_area, WithinRel(2.0 * pi * R * height, 1e-12));
  CHECK_THAT(wet.surface_area, WithinRel(pi * height * (2.0 * R - height), 1e-12));
  CHECK_THAT(wet.level, WithinRel(R - (R - height) / std::cos(0.4), 1e-12));
}

TEST_CASE("a surface across the rim of a dish, against rings added up") {
  for (const double depth : {0.05, 0.16, 0.4}) {
    for (const double tilt : {0.05, 0.3, 0.8, 1.04}) {
      const auto shape = shape_of(FloorShape::dished, depth, tilt);
      const auto sizes = vessel_sizes(shape);
      const double slope = std::tan(tilt);
      for (const double part : {-0.9, -0.3, 0.0, 0.5, 0.95}) {
        const double level = depth + part * 0.4 * slope;
        const auto sum = add_rings(0.4, sizes.sphere, slope, level);
        const auto cut = cut_at(sizes, level);
        CHECK_THAT(cut.volume, WithinRel(sum.volume, 2e-6));
        CHECK_THAT(cut.floor_area, WithinRel(sum.floor_area, 2e-6));
      }
    }
  }
}

TEST_CASE("rates are slopes and the level is the inverse of the volume") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> unit(0.0, 1.0);
  double worst_level = 0.0, worst_rate = 0.0;
  for (int i = 0; i < 3000; ++i) {
    const double depth = 0.8 * (0.02 + 0.48 * unit(random));
    const auto shape = i % 4 == 0 ? shape_of(FloorShape::flat, 0.0, 1.05 * unit(random))
                                  : shape_of(FloorShape::dished, depth, 1.05 * unit(random));
    const auto sizes = vessel_sizes(shape);
    const double volume = 1.2 * sizes.full_volume * std::pow(unit(random), 3.0) + 1e-6;
    const auto cut = cut_at(sizes, level_of(sizes, volume));
    worst_level = std::fmax(worst_level, std::fabs(cut.volume - volume) / cut.volume_rate);
    const double step = 1e-4 * volume;
    const double slope =
        sweep::slope(volume, step, [&](double at) { return wetting(sizes, at).wall_area; });
    const auto wet = wetting(sizes, volume);
    const double scale = wet.wall_area_per_volume + wet.surface_area / volume;
    worst_rate = std::fmax(worst_rate, std::fabs(wet.wall_area_per_volume - slope) / scale);
  }
  CHECK(worst_level < 1e-8);
  CHECK(worst_rate < 1e-3);
}

TEST_CASE("level and areas rise with the volume and nothing jumps") {
  for (const auto& shape : all_kinds()) {
    const auto sizes = vessel_sizes(shape);
    const double full = 1.3 * sizes.full_volume + 0.02;
    double least_rise = 1.0, largest_jump = 0.0;
    auto last = wetting(sizes, 0.0);
    for (int i = 1; i <= 20000; ++i) {
      const auto wet = wetting(sizes, full * i / 20000);
      least_rise = std::min({least_rise, wet.level - last.level, wet.wall_area - last.wall_area,
                             wet.floor_area - last.floor_area});
      if (i > 20) {
        largest_jump = std::max({largest_jump, wet.wall_area - last.wall_area,
                                 wet.floor_area - last.floor_area,
                                 std::fabs(wet.surface_area - last.surface_area)});
      }
      last = wet;
    }
    INFO("floor " << static_cast<int>(shape.floor) << " tilt " << shape.tilt);
    CHECK(least_rise > -1e-11);
    CHECK(largest_jump < 0.004);
    CHECK_THAT(last.floor_area, WithinRel(floor_total_area(shape), 1e-12));
  }
}

TEST_CASE("the first drop wets nothing yet, at a finite rate") {
  for (const auto& shape : all_kinds()) {
    const auto sizes = vessel_sizes(shape);
    const auto dry = wetting(sizes, 0.0);
    CHECK(dry.floor_area == 0.0);
    CHECK(dry.wall_area == 0.0);
    CHECK(dry.surface_area == 0.0);
    for (int power = -14; power < -3; ++power) {
      const double volume = std::pow(10.0, power);
      const auto wet = wetting(sizes, volume);
      CHECK(wet.floor_area / volume <= 3.0 / bare_depth * (1.0 + 1e-9));
      CHECK(std::isfinite(wet.level));
      CHECK(wet.wall_area_per_volume >= 0.0);
      // At the low corner of a hoof the wet wall is tan(tilt) times the wet floor.
      CHECK(wet.wall_area_per_volume < 3.001 / bare_depth * std::fmax(1.0, std::tan(shape.tilt)));
    }
  }
}

TEST_CASE("a vessel hardly tilted is an upright one") {
  for (const auto& upright : all_kinds()) {
    if (upright.tilt > 0.0) continue;
    for (const double tilt : {1e-12, 1e-8, 1e-5}) {
      auto tilted = upright;
      tilted.tilt = tilt;
      for (const double volume : {1e-3, 0.02, 0.1, 0.25}) {
        const auto expected = wetting(upright, volume), found = wetting(tilted, volume);
        CHECK_THAT(found.level, WithinAbs(expected.level, tilt + 1e-12));
        CHECK_THAT(found.floor_area, WithinAbs(expected.floor_area, tilt + 1e-12));
        CHECK_THAT(found.wall_area, WithinAbs(expected.wall_area, tilt + 1e-12));
      }
      CHECK_THAT(capacity(tilted), WithinAbs(capacity(upright), tilt));
    }
  }
}

TEST_CASE("product that covers the agitator") {
  const auto upright = shape_of(FloorShape::flat, 0.0, 0.0);
  CHECK_THAT(volume_to_cover(upright, 0.15, 0.3), WithinRel(pi * 0.16 * 0.15, 1e-14));
  // Tilted, the high edge of the disc lies 0.3 tan(0.2) above its middle.
  const auto tilted = shape_of(FloorShape::flat, 0.0, 0.2);
  CHECK_THAT(volume_to_cover(tilted, 0.15, 0.3),
             WithinRel(pi * 0.16 * (0.15 + 0.3 * std::tan(0.2)), 1e-12));
  const auto bowl = shape_of(FloorShape::hemispherical, 0.0, 0.0);
  CHECK_THAT(volume_to_cover(bowl, 0.1, 0.3), WithinRel(pi * 0.01 * (1.2 - 0.1) / 3.0, 1e-12));
}

TEST_CASE("a tilted vessel holds less") {
  for (const auto floor : {FloorShape::flat, FloorShape::dished, FloorShape::hemispherical}) {
    sweep::falling(0.0, 1.05, [&](double tilt) { return capacity(shape_of(floor, 0.0, tilt)); });
    // Lip at the centre's height: what stays is below the level through the low lip.
    const auto tilted = shape_of(floor, 0.0, 0.9);
    const double reach = 0.4 * std::tan(0.9);
    CHECK_THAT(wetting(tilted, capacity(tilted)).level,
               WithinAbs(vessel_sizes(tilted).depth + 0.6 - reach, 1e-9));
  }
}

TEST_CASE("vessels that cannot exist are refused by name") {
  const auto refused = [](const VesselShape& shape, const char* text) {
    CHECK_THROWS_AS(check(shape), InvalidArgument);
    CHECK_THROWS_WITH(check(shape), mentions(text));
  };
  CHECK_NOTHROW(check(shape_of(FloorShape::dished, 0.1, 0.3)));
  refused({FloorShape::flat, 0.0, 0.6, 0.0, 0.0}, "VesselShape: diameter");
  refused(shape_of(FloorShape::dished, 0.41, 0.0), "floor_depth");
  refused(shape_of(FloorShape::dished, 0.001, 0.0), "floor_depth");
  refused(shape_of(FloorShape::flat, 0.1, 0.0), "dished floor only");
  refused(shape_of(FloorShape::flat, 0.0, 1.2), "tilt");
  refused({FloorShape::flat, 0.8, 0.0, 0.0, 0.0}, "holds no product");
  auto endless = shape_of(FloorShape::flat, 0.0, 0.0);
  endless.wall_height = std::numeric_limits<double>::quiet_NaN();
  refused(endless, "wall_height");
}
