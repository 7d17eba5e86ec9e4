// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/stack_work.h"

#include <algorithm>

namespace outyard::hive {
namespace {

constexpr char kUsualType[] = "langstroth_deep";
constexpr int kUsualFrames = 10;

bool belongs(const apiary::BoxState& box, const apiary::HiveState& hive,
             const std::optional<base::ColonyId>& colony) {
  return !hive.stacked() || !colony || box.colony == colony;
}

}  // namespace

apiary::BoxState usualBox(const apiary::HiveState& hive, apiary::BoxRole role) {
  apiary::BoxState box;
  box.role = role;
  box.frameType = kUsualType;
  box.frames = kUsualFrames;
  bool found = false;
  for (const auto& other : hive.boxes) {
    if (other.role == apiary::BoxRole::Feeder || (found && other.role != role)) continue;
    box.frameType = other.frameType;
    if (other.frames > 0) box.frames = other.frames;
    found = found || other.role == role;
  }
  return box;
}

int positionFor(const apiary::HiveState& hive, BoxSpot spot) {
  int position = spot == BoxSpot::Top ? static_cast<int>(hive.boxes.size()) + 1 : 1;
  for (const auto& box : hive.boxes) {
    if (spot == BoxSpot::OverChambers && box.role == apiary::BoxRole::Chamber) {
      position = box.position + 1;
    }
  }
  return position;
}

std::vector<apiary::BoxState> withBox(const apiary::HiveState& hive, BoxSpot spot,
                                      apiary::BoxState box) {
  std::vector<apiary::BoxState> boxes = hive.boxes;
  const auto at = boxes.begin() + positionFor(hive, spot) - 1;
  if (hive.stacked() && !boxes.empty()) {
    const auto& neighbour = at == boxes.begin() ? boxes.front() : *(at - 1);
    if (!box.colony) box.colony = neighbour.colony;
  }
  boxes.insert(at, std::move(box));
  for (std::size_t i = 0; i < boxes.size(); ++i) boxes[i].position = static_cast<int>(i) + 1;
  return boxes;
}

std::optional<std::vector<apiary::BoxState>> reversedChambers(
    const apiary::HiveState& hive, const std::optional<base::ColonyId>& colony) {
  std::vector<apiary::BoxState> boxes = hive.boxes;
  std::vector<std::size_t> chambers;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    if (boxes[i].role == apiary::BoxRole::Chamber && belongs(boxes[i], hive, colony)) {
      chambers.push_back(i);
    }
  }
  if (chambers.size() < 2) return std::nullopt;
  for (std::size_t i = 0, k = chambers.size() - 1; i < k; ++i, --k) {
    auto& low = boxes[chambers[i]];
    auto& high = boxes[chambers[k]];
    std::swap(low, high);
    std::swap(low.position, high.position);
    std::swap(low.beneath, high.beneath);
  }
  return boxes;
}

}  // namespace outyard::hive
