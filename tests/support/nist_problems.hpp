#pragma once

#include <cmath>
#include <fstream>
#include <functional>
#include <sstream>
#include <string>
#include <vector>

#include "kettlecast/numerics/least_squares.hpp"

/// Nonlinear regression problems of the NIST Statistical Reference Datasets: the models as printed
/// in the files, the data and certified values read from them. Models are evaluated in extended
/// precision, because some certified residuals are as small as the rounding of doubles.
namespace nist {

using Real = long double;
using Numbers = std::vector<Real>;
using Model = std::function<Real(const Numbers& b, const Numbers& x)>;

struct Problem {
  std::string name;
  Model model;
  bool of_logarithm = false;  ///< the model is of log(y)
};

inline const Real pi = std::acos(Real(-1));

inline Real bell(Real x, Real centre, Real width) {
  return std::exp(-(x - centre) * (x - centre) / (width * width));
}

inline Real waves(const Numbers& b, const Numbers& x) {
  const auto turn = [&](Real period) { return 2 * pi * x[0] / period; };
  return b[0] + b[1] * std::cos(turn(12)) + b[2] * std::sin(turn(12)) +
         b[4] * std::cos(turn(b[3])) + b[5] * std::sin(turn(b[3])) + b[7] * std::cos(turn(b[6])) +
         b[8] * std::sin(turn(b[6]));
}

inline Real two_bells(const Numbers& b, const Numbers& x) {
  return b[0] * std::exp(-b[1] * x[0]) + b[2] * bell(x[0], b[3], b[4]) +
         b[5] * bell(x[0], b[6], b[7]);
}

inline Real three_exponentials(const Numbers& b, const Numbers& x) {
  return b[0] * std::exp(-b[1] * x[0]) + b[2] * std::exp(-b[3] * x[0]) +
         b[4] * std::exp(-b[5] * x[0]);
}

inline Real cubic_by_cubic(const Numbers& b, const Numbers& x) {
  const Real t = x[0];
  return (b[0] + t * (b[1] + t * (b[2] + t * b[3]))) / (1 + t * (b[4] + t * (b[5] + t * b[6])));
}

inline Real decay_by_line(const Numbers& b, const Numbers& x) {
  return std::exp(-b[0] * x[0]) / (b[1] + b[2] * x[0]);
}

inline Real saturation(const Numbers& b, const Numbers& x) {
  return b[0] * (1 - std::exp(-b[1] * x[0]));
}

/// The problems of exponential class.
inline std::vector<Problem> exponential_problems() {
  const auto ageing = [](const Numbers& b, const Numbers& x) {
    return b[0] - b[1] * x[0] * std::exp(-b[2] * x[1]);
  };
  const auto peak = [](const Numbers& b, const Numbers& x) {
    const Real z = (x[0] - b[2]) / b[1];
    return b[0] / b[1] * std::exp(-z * z / 2);
  };
  const auto two_decays = [](const Numbers& b, const Numbers& x) {
    return b[0] + b[1] * std::exp(-x[0] * b[3]) + b[2] * std::exp(-x[0] * b[4]);
  };
  const auto activated = [](const Numbers& b, const Numbers& x) {
    return b[0] * std::exp(b[1] / (x[0] + b[2]));
  };
  const auto growth = [](const Numbers& b, const Numbers& x) {
    return b[0] / (1 + std::exp(b[1] - b[2] * x[0]));
  };
  const auto skewed_growth = [](const Numbers& b, const Numbers& x) {
    return b[0] / std::pow(1 + std::exp(b[1] - b[2] * x[0]), 1 / b[3]);
  };
  return {{"BoxBOD", saturation},
          {"Chwirut1", decay_by_line},
          {"Chwirut2", decay_by_line},
          {"Eckerle4", peak},
          {"Gauss1", two_bells},
          {"Gauss2", two_bells},
          {"Gauss3", two_bells},
          {"Lanczos1", three_exponentials},
          {"Lanczos2", three_exponentials},
          {"Lanczos3", three_exponentials},
          {"MGH10", activated},
          {"MGH17", two_decays},
          {"Misra1a", saturation},
          {"Nelson", ageing, true},
          {"Rat42", growth},
          {"Rat43", skewed_growth}};
}

/// The problems of rational and miscellaneous class.
inline std::vector<Problem> other_problems() {
  const auto square_by_square = [](const Numbers& b, const Numbers& x) {
    const Real t = x[0];
    return (b[0] + t * (b[1] + t * b[2])) / (1 + t * (b[3] + t * b[4]));
  };
  const auto line_by_square = [](const Numbers& b, const Numbers& x) {
    const Real t = x[0];
    return b[0] * t * (t + b[1]) / (t * (t + b[2]) + b[3]);
  };
  const auto power = [](const Numbers& b, const Numbers& x) { return b[0] * std::pow(x[0], b[1]); };
  const auto shifted_power = [](const Numbers& b, const Numbers& x) {
    return b[0] * std::pow(b[1] + x[0], -1 / b[2]);
  };
  const auto inverse_square = [](const Numbers& b, const Numbers& x) {
    return b[0] * (1 - std::pow(1 + b[1] * x[0] / 2, Real(-2)));
  };
  const auto inverse_root = [](const Numbers& b, const Numbers& x) {
    return b[0] * (1 - 1 / std::sqrt(1 + 2 * b[1] * x[0]));
  };
  const auto hyperbola = [](const Numbers& b, const Numbers& x) {
    return b[0] * b[1] * x[0] / (1 + b[1] * x[0]);
  };
  const auto arctangent = [](const Numbers& b, const Numbers& x) {
    return b[0] - b[1] * x[0] - std::atan(b[2] / (x[0] - b[3])) / pi;
  };
  return {{"Bennett5", shifted_power}, {"DanWood", power},           {"ENSO", waves},
          {"Hahn1", cubic_by_cubic},   {"Kirby2", square_by_square}, {"MGH09", line_by_square},
          {"Misra1b", inverse_square}, {"Misra1c", inverse_root},    {"Misra1d", hyperbola},
          {"Roszman1", arctangent},    {"Thurber", cubic_by_cubic}};
}

/// What a file holds.
struct Certified {
  std::vector<Eigen::VectorXd> starts{2};
  Eigen::VectorXd values;
  Eigen::VectorXd errors;
  double residual_error = 0.0;  ///< residual standard deviation
  Numbers y;
  std::vector<Numbers> x;
};

inline Numbers numbers_in(const std::string& text) {
  std::istringstream stream(text);
  Numbers numbers;
  for (std::string word; stream >> word;) numbers.push_back(std::strtold(word.c_str(), nullptr));
  return numbers;
}

inline Eigen::VectorXd column(const std::vector<Numbers>& rows, std::size_t index) {
  Eigen::VectorXd values(static_cast<Eigen::Index>(rows.size()));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    values[static_cast<Eigen::Index>(i)] = static_cast<double>(rows[i].at(index));
  }
  return values;
}

/// Reads a file; the data begin on line 61 of all of them.
inline Certified read(std::istream& file) {
  Certified read;
  std::vector<Numbers> table;
  std::string line;
  for (int number = 1; std::getline(file, line); ++number) {
    const auto equals = line.find('=');
    const auto colon = line.find("Residual Standard Deviation:");
    if (number >= 61) {
      Numbers row = numbers_in(line);
      if (row.empty()) continue;
      read.y.push_back(row.front());
      read.x.emplace_back(row.begin() + 1, row.end());
    } else if (number > 40 && equals != std::string::npos) {
      table.push_back(numbers_in(line.substr(equals + 1)));
    } else if (colon != std::string::npos) {
      read.residual_error = static_cast<double>(numbers_in(line.substr(colon + 28)).at(0));
    }
  }
  read.starts = {column(table, 0), column(table, 1)};
  read.values = column(table, 2);
  read.errors = column(table, 3);
  return read;
}

/// Residuals of a problem with a central difference for each slope.
inline kettlecast::LeastSquaresProblem posed(const Problem& problem, const Certified& known) {
  const auto at = [&](const Numbers& b) {
    Numbers shown;
    for (const auto& x : known.x) shown.push_back(problem.model(b, x));
    return shown;
  };
  const auto extended = [](const Eigen::VectorXd& b) { return Numbers(b.begin(), b.end()); };
  const auto count = static_cast<Eigen::Index>(known.y.size());
  const auto residuals = [=, &problem, &known](const Eigen::VectorXd& b) {
    const Numbers shown = at(extended(b));
    Eigen::VectorXd found(count);
    for (std::size_t i = 0; i < shown.size(); ++i) {
      const Real y = problem.of_logarithm ? std::log(known.y[i]) : known.y[i];
      found[static_cast<Eigen::Index>(i)] = static_cast<double>(shown[i] - y);
    }
    return found;
  };
  const auto jacobian = [=](const Eigen::VectorXd& b) {
    Eigen::MatrixXd found(count, b.size());
    for (Eigen::Index k = 0; k < b.size(); ++k) {
      Numbers low = extended(b), high = low;
      const Real step = Real(1e-6) * (b[k] != 0.0 ? std::fabs(Real(b[k])) : Real(1));
      low[static_cast<std::size_t>(k)] -= step;
      high[static_cast<std::size_t>(k)] += step;
      const Numbers below = at(low), above = at(high);
      for (std::size_t i = 0; i < below.size(); ++i) {
        found(static_cast<Eigen::Index>(i), k) =
            static_cast<double>((above[i] - below[i]) / (2 * step));
      }
    }
    return found;
  };
  return {residuals, jacobian};
}

}  // namespace nist
