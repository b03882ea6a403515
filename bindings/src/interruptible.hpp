// Long work that Ctrl-C ends. Python's signals reach its main thread alone, and only while that runs Python's code.
#pragma once

#include <chrono>
#include <future>
#include <thread>
#include <utility>

#include <pybind11/pybind11.h>

namespace bankwright::python {

// The work's answer; what the work throws. It runs on a thread of its own, without the interpreter's lock, while this
// one looks for signals. Where one raises (KeyboardInterrupt), that is thrown at once, `interrupted` is told, and the
// work is left to end by itself: it must own all that it uses, and nothing of Python.
template <class Work, class Interrupted>
auto interruptible(Work work, Interrupted interrupted) {
    constexpr auto looks_apart = std::chrono::milliseconds(20);
    std::packaged_task<decltype(work())()> task(std::move(work));
    auto answer = task.get_future();
    std::thread worker(std::move(task));
    {
        pybind11::gil_scoped_release const release;
        while (answer.wait_for(looks_apart) != std::future_status::ready) {
            pybind11::gil_scoped_acquire const acquire;
            if (PyErr_CheckSignals() == 0) continue;
            interrupted(worker);
            throw pybind11::error_already_set();
        }
        worker.join();
    }
    return answer.get();
}

template <class Work>
auto interruptible(Work work) {
    return interruptible(std::move(work), [](std::thread& worker) { worker.detach(); });
}

} // namespace bankwright::python
