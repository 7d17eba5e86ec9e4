-- SPDX-License-Identifier: GPL-3.0-or-later
-- What is circled on a printed line: stores as hefted, and a lid that was only lifted.
ALTER TABLE "inspections"
  ADD COLUMN "stores_level" TEXT CHECK ("stores_level" IN ('low', 'medium', 'heavy'));
ALTER TABLE "inspections"
  ADD COLUMN "glance" TEXT CHECK ("glance" IN ('about_right'));
