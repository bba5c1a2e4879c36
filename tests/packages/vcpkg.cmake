# SPDX-License-Identifier: Apache-2.0
# Runs the port of .packaging/vcpkg with stand-ins for the functions of vcpkg that it calls, which need a network to be
# had; each refuses an argument that vcpkg's own would not know. A program is then built by find_package and run.
#
# cmake -D ROOT=... -D FOLDER=... -D FEATURES=gmp -D VCPKG_LIBRARY_LINKAGE=static -P vcpkg.cmake
cmake_minimum_required(VERSION 3.25)
set(CURRENT_BUILDTREES_DIR "${FOLDER}/buildtrees")
set(CURRENT_PACKAGES_DIR "${FOLDER}/package")
file(REMOVE_RECURSE "${FOLDER}")
file(MAKE_DIRECTORY "${CURRENT_BUILDTREES_DIR}")

function(run)
    execute_process(COMMAND ${ARGN} OUTPUT_VARIABLE output ERROR_VARIABLE output RESULT_VARIABLE result)
    if(result)
        message(FATAL_ERROR "${ARGN}: ${output}")
    endif()
    set(output "${output}" PARENT_SCOPE)
endfunction()

macro(arguments one many)
    cmake_parse_arguments(arg "" "${one}" "${many}" ${ARGN})
    if(arg_UNPARSED_ARGUMENTS)
        message(FATAL_ERROR "unknown: ${arg_UNPARSED_ARGUMENTS}")
    endif()
endmacro()

function(vcpkg_configure_meson)
    arguments("SOURCE_PATH" "OPTIONS;OPTIONS_DEBUG;OPTIONS_RELEASE;LANGUAGES;ADDITIONAL_BINARIES;ADDITIONAL_PROPERTIES" ${ARGN})
    string(REPLACE ";" "\n" properties "${arg_ADDITIONAL_PROPERTIES}")
    file(WRITE "${FOLDER}/native.ini" "[properties]\n${properties}\n[built-in options]\ndefault_library = '${VCPKG_LIBRARY_LINKAGE}'\n")
    run(meson setup "${FOLDER}/build" "${arg_SOURCE_PATH}" --native-file "${FOLDER}/native.ini" --prefix "${CURRENT_PACKAGES_DIR}"
        --libdir lib ${arg_OPTIONS})
endfunction()

function(vcpkg_install_meson)
    arguments("" "" ${ARGN})
    run(meson install -C "${FOLDER}/build")
endfunction()

function(vcpkg_fixup_pkgconfig)
    arguments("" "" ${ARGN})
    if(NOT EXISTS "${CURRENT_PACKAGES_DIR}/lib/pkgconfig/rodtravel.pc")
        message(FATAL_ERROR "no rodtravel.pc")
    endif()
endfunction()

# As vcpkg does: the files of CMake move to share/, and what they say of their prefix follows.
function(vcpkg_cmake_config_fixup)
    arguments("PACKAGE_NAME;CONFIG_PATH" "" ${ARGN})
    file(RENAME "${CURRENT_PACKAGES_DIR}/${arg_CONFIG_PATH}" "${CURRENT_PACKAGES_DIR}/share/rodtravel")
    set(config "${CURRENT_PACKAGES_DIR}/share/rodtravel/rodtravelConfig.cmake")
    file(READ "${config}" text)
    string(REPLACE "/../../.." "/../.." text "${text}")
    file(WRITE "${config}" "${text}")
endfunction()

function(vcpkg_install_copyright)
    arguments("COMMENT" "FILE_LIST" ${ARGN})
    file(COPY ${arg_FILE_LIST} DESTINATION "${CURRENT_PACKAGES_DIR}/share/rodtravel")
endfunction()

set(port "${ROOT}/.packaging/vcpkg/rodtravel")
file(READ "${port}/vcpkg.json" manifest)
string(JSON version GET "${manifest}" version)
file(STRINGS "${ROOT}/meson.build" said REGEX "^  version: '")
if(NOT said STREQUAL "  version: '${version}',")
    message(FATAL_ERROR "vcpkg.json is of version ${version}")
endif()
file(MAKE_DIRECTORY "${CURRENT_PACKAGES_DIR}/share")
include("${port}/portfile.cmake")

file(WRITE "${FOLDER}/app/CMakeLists.txt" "cmake_minimum_required(VERSION 3.10)
project(judge C)
find_package(rodtravel REQUIRED CONFIG)
add_executable(judge ${ROOT}/.packaging/conan/test_package/judge.c)
target_link_libraries(judge PRIVATE rodtravel::rodtravel)
")
run("${CMAKE_COMMAND}" -S "${FOLDER}/app" -B "${FOLDER}/app/build" "-Drodtravel_DIR=${CURRENT_PACKAGES_DIR}/share/rodtravel")
run("${CMAKE_COMMAND}" --build "${FOLDER}/app/build")
run("${FOLDER}/app/build/judge")
message(STATUS "${output}")
