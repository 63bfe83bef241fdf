#include <glm/vec3.hpp>
#include <toml++/toml.h>
#include <doctest/doctest.h>
#include <unistd.h>
#include <fcntl.h>
#include <sys/stat.h>
