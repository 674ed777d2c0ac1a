#pragma once

#include <cstddef>
#include <functional>

namespace kettlecast {

/// Runs `task(0) .. task(count - 1)` on several threads; results do not depend on their number.
///
/// The first exception (by index) is thrown again after all threads have stopped.
/// @param count    tasks [-]
/// @param threads  0: one per core
/// @param task     must be safe to call from several threads with different indices
/// @param poll     called now and then on the calling thread; may throw to stop early
void parallel_for(std::size_t count, unsigned threads, const std::function<void(std::size_t)>& task,
                  const std::function<void()>& poll);

}  // namespace kettlecast
