include(CMakeFindDependencyMacro)
find_dependency(Eigen3)
find_dependency(Threads)
include(${CMAKE_CURRENT_LIST_DIR}/kettlecastTargets.cmake)
