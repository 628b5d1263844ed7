-- AlterTable
ALTER TABLE "report_photos" ADD COLUMN     "height" INTEGER,
ADD COLUMN     "print_hash" TEXT,
ADD COLUMN     "screen_hash" TEXT,
ADD COLUMN     "thumb_hash" TEXT,
ADD COLUMN     "width" INTEGER;

-- The table has had its policy from the first. Pictures as issued are objects in use too.
CREATE OR REPLACE FUNCTION garboard_object_in_use(hash text) RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM photos WHERE hash IN (sha256, thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM report_photos WHERE hash IN (thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM clearance_files WHERE hash IN (sha256, thumb_hash, screen_hash))
        OR EXISTS (SELECT FROM photo_prints WHERE sha256 = hash)
        OR EXISTS (SELECT FROM reports WHERE sha256 = hash);
$$;
