#include "bind.hpp"
#include "kettlecast/control/loop_sums.hpp"
#include "kettlecast/control/thermostat_cycle.hpp"
#include "record.hpp"

namespace kettlecast::python {

void bind_control(py::module_& module) {
  bind_record<ThermostatLoop>(module, "ThermostatLoop",
                              "A thermostat on a first-order plant with dead time.");
  bind_record<ThermostatCycle>(module, "ThermostatCycle", "The steady cycle of a thermostat.");
  bind_record<PiLoop>(module, "PiLoop", "A PI controller on a first-order plant.");
  bind_record<PiResponse>(module, "PiResponse", "How a PI loop answers a step of the set point.");
  bind_record<UltimateCycle>(module, "UltimateCycle",
                             "Where proportional control alone swings for ever.");
  auto control = module.def_submodule("control", "Control loops in closed form.");
  control.def("thermostat_cycle", &thermostat_cycle, py::arg("loop"),
              "The steady cycle of a thermostat with dead time; exact exponentials.");
  control.def("pi_response", &pi_response, py::arg("loop"),
              "Frequency, damping and overshoot of a PI loop; second-order step response.");
  control.def("load_error_integral", &load_error_integral, py::arg("loop"), py::arg("load"),
              "Integral of the error after a step of the load, -d Ti/Kc [signal s].");
  control.def("ultimate_cycle", &ultimate_cycle, py::arg("plant_gain"), py::arg("time_constant"),
              py::arg("dead_time"),
              "Ultimate gain and period of a first-order plant with dead time.");
}

}  // namespace kettlecast::python
