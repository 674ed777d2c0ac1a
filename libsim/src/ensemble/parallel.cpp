#include "kettlecast/ensemble/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <exception>
#include <future>
#include <thread>
#include <vector>

namespace kettlecast {

void parallel_for(std::size_t count, unsigned threads, const std::function<void(std::size_t)>& task,
                  const std::function<void()>& poll) {
  const unsigned cores = std::max(1u, std::thread::hardware_concurrency());
  const std::size_t workers = std::min<std::size_t>(threads == 0 ? cores : threads, count);
  std::atomic<std::size_t> next{0};
  std::atomic<bool> stop{false};
  std::vector<std::exception_ptr> failures(count);
  const auto work = [&] {
    // An index once taken is run, so that the failure reported is always the first one.
    while (!stop) {
      const std::size_t i = next++;
      if (i >= count) return;
      try {
        task(i);
      } catch (...) {
        failures[i] = std::current_exception();
        stop = true;
      }
    }
  };
  std::vector<std::future<void>> running;
  for (std::size_t i = 0; i < workers; ++i) {
    running.push_back(std::async(std::launch::async, work));
  }
  std::exception_ptr interrupted;
  for (auto& worker : running) {
    while (worker.wait_for(std::chrono::milliseconds(50)) != std::future_status::ready) {
      try {
        if (!interrupted) poll();
      } catch (...) {
        interrupted = std::current_exception();
        stop = true;
      }
    }
  }
  if (interrupted) std::rethrow_exception(interrupted);
  for (const auto& failure : failures) {
    if (failure) std::rethrow_exception(failure);
  }
}

}  // namespace kettlecast
