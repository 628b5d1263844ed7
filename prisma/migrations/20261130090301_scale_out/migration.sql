-- AlterTable
ALTER TABLE "outbox" ADD COLUMN     "traceparent" TEXT;

-- CreateTable
CREATE TABLE "sweep_rounds" (
    "name" TEXT NOT NULL,
    "seen_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "sweep_rounds_pkey" PRIMARY KEY ("name")
);

-- CreateIndex
CREATE INDEX "clearance_files_thumb_hash_idx" ON "clearance_files" USING HASH ("thumb_hash");

-- CreateIndex
CREATE INDEX "clearance_files_screen_hash_idx" ON "clearance_files" USING HASH ("screen_hash");

-- CreateIndex
CREATE INDEX "photos_thumb_hash_idx" ON "photos" USING HASH ("thumb_hash");

-- CreateIndex
CREATE INDEX "photos_screen_hash_idx" ON "photos" USING HASH ("screen_hash");

-- CreateIndex
CREATE INDEX "photos_print_hash_idx" ON "photos" USING HASH ("print_hash");

-- CreateIndex
CREATE INDEX "report_photos_thumb_hash_idx" ON "report_photos" USING HASH ("thumb_hash");

-- CreateIndex
CREATE INDEX "report_photos_screen_hash_idx" ON "report_photos" USING HASH ("screen_hash");

-- CreateIndex
CREATE INDEX "report_photos_print_hash_idx" ON "report_photos" USING HASH ("print_hash");
