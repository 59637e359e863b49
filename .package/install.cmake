# Installing (cmake --install), Debian packages (cpack), and the CMake package that other projects find.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

# The program, with what it says about itself to shells and man.
set(says ${CMAKE_BINARY_DIR}/says)
file(MAKE_DIRECTORY ${says})
add_custom_command(
  OUTPUT ${says}/basinwright.1.gz
  COMMAND basinwright completions bash --output ${says}/basinwright
  COMMAND basinwright completions zsh --output ${says}/_basinwright
  COMMAND basinwright completions fish --output ${says}/basinwright.fish
  COMMAND basinwright man-page --output ${says}/basinwright.1
  COMMAND gzip -9nf ${says}/basinwright.1
  DEPENDS basinwright VERBATIM)
add_custom_target(basinwright_says ALL DEPENDS ${says}/basinwright.1.gz)
add_dependencies(demo basinwright_says)
# What is built is installed; the tests need not be.
set(CMAKE_SKIP_INSTALL_ALL_DEPENDENCY ON)

# Which folders are there only for us, for `uninstall`.
configure_file(.package/uninstall.cmake.in uninstall.cmake @ONLY)
add_custom_target(uninstall COMMAND ${CMAKE_COMMAND} -P ${CMAKE_BINARY_DIR}/uninstall.cmake)
set(places ${CMAKE_INSTALL_BINDIR} ${CMAKE_INSTALL_LIBDIR}/cmake/basinwright include/basinwright
  ${CMAKE_INSTALL_DATADIR}/bash-completion/completions ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions
  ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d ${CMAKE_INSTALL_MANDIR}/man1 ${CMAKE_INSTALL_DOCDIR}
  ${CMAKE_INSTALL_DATADIR}/doc/libbasinwright-dev)
install(CODE "
  foreach(place ${places})
    set(folder \"\$ENV{DESTDIR}\${CMAKE_INSTALL_PREFIX}/\${place}\")
    while(NOT EXISTS \"\${folder}\")
      file(APPEND \"${CMAKE_BINARY_DIR}/installed_folders.txt\" \"\${folder}\\n\")
      get_filename_component(folder \"\${folder}\" DIRECTORY)
    endwhile()
  endforeach()" ALL_COMPONENTS)

install(TARGETS basinwright RUNTIME COMPONENT program)
install(FILES ${says}/basinwright DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT program)
install(FILES ${says}/_basinwright DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions COMPONENT program)
install(FILES ${says}/basinwright.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT program)
install(FILES ${says}/basinwright.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
install(FILES README.md DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)
install(DIRECTORY docs DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program
        PATTERN CHANGELOG.md EXCLUDE PATTERN deep-runs.md EXCLUDE)
# What one begins a rate book of one's own with.
install(FILES src/readers/demonstration_rates.json DESTINATION ${CMAKE_INSTALL_DOCDIR}/examples COMPONENT program)
install(DIRECTORY examples DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)

# The library, where its dependencies are installed packages: a fetched one could not be found again.
get_target_property(fmt_is_installed fmt::fmt IMPORTED)
if(fmt_is_installed)
  add_library(basinwright_library INTERFACE)
  set_target_properties(basinwright_library PROPERTIES EXPORT_NAME basinwright)
  set(rooms ${BASINWRIGHT_ROOMS})
  list(REMOVE_ITEM rooms cli)
  set(libraries basinwright_library basinwright_options)
  foreach(room IN LISTS rooms)
    target_link_libraries(basinwright_library INTERFACE basinwright_${room})
    set_target_properties(basinwright_${room} PROPERTIES EXPORT_NAME ${room})
    list(APPEND libraries basinwright_${room})
    add_dependencies(basinwright_says basinwright_${room})
  endforeach()
  set_target_properties(basinwright_options PROPERTIES EXPORT_NAME options)
  set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/basinwright)
  install(TARGETS ${libraries} EXPORT basinwright ARCHIVE COMPONENT library INCLUDES DESTINATION include)
  install(DIRECTORY include/basinwright DESTINATION include COMPONENT library PATTERN cli EXCLUDE)
  install(EXPORT basinwright NAMESPACE basinwright:: DESTINATION ${package_dir} COMPONENT library
          FILE basinwright-targets.cmake)
  file(WRITE ${CMAKE_BINARY_DIR}/generated/basinwright-config.cmake
       "include(CMakeFindDependencyMacro)\nfind_dependency(fmt)\n"
       "include(\${CMAKE_CURRENT_LIST_DIR}/basinwright-targets.cmake)\n")
  write_basic_package_version_file(${CMAKE_BINARY_DIR}/generated/basinwright-config-version.cmake
                                   COMPATIBILITY SameMinorVersion)
  install(FILES ${CMAKE_BINARY_DIR}/generated/basinwright-config.cmake
                ${CMAKE_BINARY_DIR}/generated/basinwright-config-version.cmake
          DESTINATION ${package_dir} COMPONENT library)
endif()

# Debian packages, one a component. A package must not change with the clock: SOURCE_DATE_EPOCH is honoured.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME basinwright)
set(CPACK_PACKAGE_CONTACT "Basinwright <team@basinwright.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "job planner for people who repaint swimming pools")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_COMPONENTS_ALL program)
if(fmt_is_installed)
  list(APPEND CPACK_COMPONENTS_ALL library)
endif()
set(CPACK_COMPONENTS_GROUPING IGNORE)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME basinwright)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION "From the tape measurements and the state of the surface it works out areas,
washes, etch, primer and kits, prices the job, and lays out a programme from
drain to refill with the cautions of each step.")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME libbasinwright-dev)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_DEPENDS "libfmt-dev")
set(CPACK_COMPONENT_LIBRARY_DESCRIPTION "Headers, static libraries and a CMake package for programs that take off,
prepare, price and schedule the repainting of a swimming pool.")
foreach(package IN ITEMS basinwright:program libbasinwright-dev:library)
  string(REPLACE ":" ";" package ${package})
  list(GET package 0 name)
  list(GET package 1 component)
  set(PACKAGE_NAME ${name})
  configure_file(.package/changelog.in generated/${name}/changelog @ONLY)
  add_custom_command(TARGET basinwright_says POST_BUILD VERBATIM
                     COMMAND gzip -9nkf ${CMAKE_BINARY_DIR}/generated/${name}/changelog)
  install(FILES ${CMAKE_BINARY_DIR}/generated/${name}/changelog.gz .package/copyright
          DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${name} COMPONENT ${component})
endforeach()
include(CPack)
