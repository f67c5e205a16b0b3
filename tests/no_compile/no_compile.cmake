# What must not compile, and a control that must: 
#   cmake -D COMPILER=c++ -D SOURCE_DIR=<root> -D WORK_DIR=<scratch> -P no_compile.cmake
# Each snippet becomes the body of a function that sees the quantities.
set(work ${WORK_DIR})
file(MAKE_DIRECTORY ${work})

function(try_snippet name body must_compile)
  file(WRITE ${work}/${name}.cpp "#include \"quantity/quantity.hpp\"
using namespace wm::quantity;
void snippet() {
  [[maybe_unused]] const PressureGauge gauge = psi_gauge(28);
  [[maybe_unused]] const PressureAbsolute absolute{101325.0};
  [[maybe_unused]] const Length length = inches(38);
  [[maybe_unused]] const Mass mass = pounds(12);
  [[maybe_unused]] const Temperature temperature = celsius(15);
  [[maybe_unused]] const TemperatureDifference step{10.0};
  [[maybe_unused]] const Torque torque = inch_pounds(120);
  [[maybe_unused]] const Energy energy{80.0};
  ${body}
}
")
  execute_process(
    COMMAND ${COMPILER} -std=c++23 -fsyntax-only -I${SOURCE_DIR}/src ${work}/${name}.cpp
    RESULT_VARIABLE result OUTPUT_QUIET ERROR_VARIABLE message)
  if(must_compile AND NOT result EQUAL 0)
    message(SEND_ERROR "${name} must compile, and does not:\n${message}")
  elseif(NOT must_compile AND result EQUAL 0)
    message(SEND_ERROR "${name} must not compile, and does: ${body}")
  else()
    message(STATUS "${name}: as it must be")
  endif()
endfunction()

# The control: if this fails, the refusals below prove nothing.
try_snippet(control "[[maybe_unused]] const auto a = length + inches(1);
  [[maybe_unused]] const auto b = temperature + step;
  [[maybe_unused]] const TemperatureDifference c = temperature - temperature;
  [[maybe_unused]] const PressureDifference d = gauge - gauge;
  [[maybe_unused]] const double e = length / inches(2);
  [[maybe_unused]] const auto f = 2.0 * torque;" TRUE)

try_snippet(gauge_plus_absolute "(void)(gauge + absolute);" FALSE)
try_snippet(gauge_minus_absolute "(void)(gauge - absolute);" FALSE)
try_snippet(gauge_plus_gauge "(void)(gauge + gauge);" FALSE)
try_snippet(length_plus_mass "(void)(length + mass);" FALSE)
try_snippet(temperature_plus_temperature "(void)(temperature + temperature);" FALSE)
try_snippet(twice_a_temperature "(void)(2.0 * temperature);" FALSE)
try_snippet(torque_plus_energy "(void)(torque + energy);" FALSE)
try_snippet(length_less_than_mass "(void)(length < mass);" FALSE)
try_snippet(gauge_as_absolute "const PressureAbsolute p = gauge; (void)p;" FALSE)
try_snippet(step_as_temperature "const Temperature t = step; (void)t;" FALSE)
try_snippet(number_as_length "const Length l = 38.0; (void)l;" FALSE)
try_snippet(length_plus_number "(void)(length + 1.0);" FALSE)
