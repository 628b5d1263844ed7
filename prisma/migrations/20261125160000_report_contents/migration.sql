-- AlterTable
ALTER TABLE "firms" ADD COLUMN     "measures" TEXT NOT NULL DEFAULT 'both',
ADD COLUMN     "paper" TEXT NOT NULL DEFAULT 'A4';

-- AlterTable
ALTER TABLE "surveys" ADD COLUMN     "present" TEXT[] DEFAULT ARRAY[]::TEXT[];

-- CreateTable
CREATE TABLE "photo_prints" (
    "firm_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "edge" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,

    CONSTRAINT "photo_prints_pkey" PRIMARY KEY ("photo_id","edge")
);

-- CreateIndex
CREATE INDEX "photo_prints_sha256_idx" ON "photo_prints"("sha256");

-- AddForeignKey
ALTER TABLE "photo_prints" ADD CONSTRAINT "photo_prints_photo_id_fkey" FOREIGN KEY ("photo_id") REFERENCES "photos"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Row-level security, as for every table with a firm.
ALTER TABLE "photo_prints" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "photo_prints" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));

-- Prints of a photo are objects in use too.
CREATE OR REPLACE FUNCTION garboard_object_in_use(hash text) RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM photos WHERE hash IN (sha256, thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM clearance_files WHERE hash IN (sha256, thumb_hash, screen_hash))
        OR EXISTS (SELECT FROM photo_prints WHERE sha256 = hash)
        OR EXISTS (SELECT FROM reports WHERE sha256 = hash);
$$;
