// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the calibration report and its pictures: outyard_calibration FOLDER [TWINS]
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <filesystem>
#include <fstream>

#include "tests/calibration/checks.h"

int main(int argc, char** argv) {
  if (argc < 2) {
    std::fprintf(stderr, "usage: outyard_calibration FOLDER [TWINS]\n");
    return 2;
  }
  try {
    const std::filesystem::path folder = argv[1];
    std::filesystem::create_directories(folder);
    const int twins = argc > 2 ? std::atoi(argv[2]) : 300;
    const auto page = outyard::calibration::page(twins > 0 ? twins : 300);
    const auto write = [&](const std::string& name, const std::string& text) {
      std::ofstream out(folder / name, std::ios::binary);
      out << text;
      if (!out.flush()) throw std::runtime_error("cannot write " + (folder / name).string());
    };
    write("calibration.md", page.text);
    for (const auto& [name, svg] : page.pictures) write(name, svg);
  } catch (const std::exception& e) {
    std::fprintf(stderr, "%s\n", e.what());
    return 1;
  }
  return 0;
}
