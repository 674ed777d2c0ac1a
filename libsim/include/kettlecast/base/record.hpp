#pragma once

/// Value types of the library are plain structs ("records"). Each lists its members once:
///
///     template <class Visitor>
///     static void describe(Visitor&& visit) {
///       visit("mass", &Addition::mass);
///       visit("temperature", &Addition::temperature);
///     }
///
/// From that one list come equality here and, in the bindings, the keyword constructor, the
/// read-only properties, repr and pickling. Order of the list is order of the constructor.
namespace kettlecast {

/// True if every described member of two records is equal.
template <class Record>
bool equal_records(const Record& left, const Record& right) {
  bool equal = true;
  Record::describe(
      [&](const char*, auto member) { equal = equal && left.*member == right.*member; });
  return equal;
}

}  // namespace kettlecast
