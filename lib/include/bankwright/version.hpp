// Which bankwright is this? CMake and Python read the numbers from this file.
#pragma once

#define BANKWRIGHT_VERSION_MAJOR 0
#define BANKWRIGHT_VERSION_MINOR 1
#define BANKWRIGHT_VERSION_PATCH 0
#define BANKWRIGHT_VERSION "0.1.0"
