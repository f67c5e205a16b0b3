# The tests look at the state through the views and the descriptions of higher rooms.
target_link_libraries(wm_bay_test PRIVATE wm::calculation wm::desk)
