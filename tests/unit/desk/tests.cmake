# The desk is asked the way a person asks it: inputs as JSON text, which the faces read.
target_link_libraries(wm_desk_test PRIVATE wm::binder)
