# Sums of different kinds are refused by the compiler; see no_compile.cmake.
add_test(NAME no_compile
         COMMAND ${CMAKE_COMMAND} -D COMPILER=${CMAKE_CXX_COMPILER} -D SOURCE_DIR=${CMAKE_SOURCE_DIR}
                 -D WORK_DIR=${CMAKE_CURRENT_BINARY_DIR}/no_compile
                 -P ${CMAKE_SOURCE_DIR}/tests/no_compile/no_compile.cmake)
