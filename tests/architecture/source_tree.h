// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

/// The sources as files, for the tests that read them.
namespace outyard::architecture {

namespace fs = std::filesystem;

inline fs::path sourceRoot() {
  return OUTYARD_SOURCE_DIR;
}

inline std::string textOf(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// "core/apiary/state.cpp"
inline std::string nameOf(const fs::path& file) {
  return fs::relative(file, sourceRoot()).generic_string();
}

/// All files below the folders with one of the extensions, sorted by name.
inline std::vector<fs::path> filesBelow(const std::vector<std::string>& folders,
                                        const std::vector<std::string>& extensions) {
  std::vector<fs::path> out;
  for (const auto& folder : folders) {
    const fs::path top = sourceRoot() / folder;
    if (!fs::exists(top)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(top)) {
      if (!entry.is_regular_file()) continue;
      const std::string extension = entry.path().extension().string();
      if (std::find(extensions.begin(), extensions.end(), extension) != extensions.end()) {
        out.push_back(entry.path());
      }
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

/// The text with every comment blanked out (string literals are left alone), so that line numbers
/// stay.
inline std::string withoutComments(std::string text) {
  enum class In { Code, Line, Block, String, Character } in = In::Code;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const char next = i + 1 < text.size() ? text[i + 1] : '\0';
    switch (in) {
      case In::Code:
        if (c == '/' && next == '/') in = In::Line;
        if (c == '/' && next == '*') in = In::Block;
        if (c == '"') in = In::String;
        // A digit separator (1'000) opens no character.
        if (c == '\'' && (i == 0 || !std::isalnum(static_cast<unsigned char>(text[i - 1])))) {
          in = In::Character;
        }
        break;
      case In::Line:
        if (c == '\n') in = In::Code;
        break;
      case In::Block:
        if (c == '*' && next == '/') {
          text[i] = text[i + 1] = ' ';
          ++i;
          in = In::Code;
          continue;
        }
        break;
      case In::String:
      case In::Character:
        if (c == '\\') {
          ++i;
          continue;
        }
        if (c == (in == In::String ? '"' : '\'')) in = In::Code;
        break;
    }
    if ((in == In::Line || in == In::Block) && c != '\n') text[i] = ' ';
  }
  return text;
}

inline std::size_t lineOf(const std::string& text, std::size_t at) {
  return 1 + static_cast<std::size_t>(
                 std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

}  // namespace outyard::architecture
