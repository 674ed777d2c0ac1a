#pragma once

#include <stdexcept>
#include <string>
#include <vector>

/// Every error the library throws. Each is a standard exception and also derives from `Error`,
/// so one `catch (const kettlecast::Error&)` holds them all.
namespace kettlecast {

/// Mark of an error thrown on purpose by this library.
class Error {
 public:
  virtual ~Error() = default;
  /// The message: where, what was given, what is allowed.
  virtual const char* message() const noexcept = 0;
};

/// An argument that no run can accept.
class InvalidArgument : public std::invalid_argument, public Error {
 public:
  using std::invalid_argument::invalid_argument;
  const char* message() const noexcept override { return what(); }
};

/// A name that is not known; the message lists the nearest ones.
class UnknownName : public std::out_of_range, public Error {
 public:
  UnknownName(const std::string& where, const std::string& name,
              const std::vector<std::string>& known);
  const char* message() const noexcept override { return what(); }
};

/// A state at which a property or correlation has no meaning.
class OutsideValidity : public std::domain_error, public Error {
 public:
  using std::domain_error::domain_error;
  const char* message() const noexcept override { return what(); }
};

/// An integration that cannot go on.
class IntegrationFailure : public std::runtime_error, public Error {
 public:
  /// @param reason     what went wrong, in words
  /// @param time       time of the failure [s]
  /// @param component  state component concerned, "" if none
  /// @param phase      phase of the recipe, "" outside a forecast
  IntegrationFailure(const std::string& reason, double time, const std::string& component,
                     const std::string& phase = "");
  const char* message() const noexcept override { return what(); }

  const std::string reason;
  const double time;            ///< [s]
  const std::string component;  ///< "node.quantity"
  const std::string phase;
};

/// Throws InvalidArgument unless lower <= value <= upper and value is finite.
///
/// @param where  what carries the value, e.g. `Kettle "north"`
/// @param key    name of the value
/// @param value  value to check [unit]
/// @param lower  lowest allowed value [unit]
/// @param upper  highest allowed value [unit]
/// @param unit   unit for the message
void require_between(const std::string& where, const std::string& key, double value, double lower,
                     double upper, const std::string& unit);

/// Up to `count` of the known names nearest to `name` by edit distance.
std::vector<std::string> nearest_names(const std::string& name,
                                       const std::vector<std::string>& known,
                                       std::size_t count = 3);

}  // namespace kettlecast
