# SPDX-License-Identifier: Apache-2.0
# An overlay port that builds this checkout: vcpkg install rodtravel --overlay-ports=.packaging/vcpkg
# The command, the bindings and the tests stay out.
set(SOURCE_PATH "${CURRENT_BUILDTREES_DIR}/src")
file(REMOVE_RECURSE "${SOURCE_PATH}")
foreach(part IN ITEMS meson.build LICENSE include lib tables)
    file(COPY "${CMAKE_CURRENT_LIST_DIR}/../../../${part}" DESTINATION "${SOURCE_PATH}")
endforeach()

if("gmp" IN_LIST FEATURES)
    set(exact gmp)
else()
    set(exact plain)
endif()

vcpkg_configure_meson(
    SOURCE_PATH "${SOURCE_PATH}"
    ADDITIONAL_PROPERTIES "exact = '${exact}'"
)
vcpkg_install_meson()
vcpkg_fixup_pkgconfig()
vcpkg_cmake_config_fixup(CONFIG_PATH "lib/cmake/rodtravel")
file(REMOVE_RECURSE "${CURRENT_PACKAGES_DIR}/debug/include" "${CURRENT_PACKAGES_DIR}/debug/share")
vcpkg_install_copyright(FILE_LIST "${SOURCE_PATH}/LICENSE")
