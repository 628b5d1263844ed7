-- Every column that names an object: firms' archives, and the ZIP files of sheets being brought in.
CREATE OR REPLACE FUNCTION garboard_object_in_use(hash text) RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM photos WHERE hash IN (sha256, thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM report_photos WHERE hash IN (thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM clearance_files WHERE hash IN (sha256, thumb_hash, screen_hash))
        OR EXISTS (SELECT FROM photo_prints WHERE sha256 = hash)
        OR EXISTS (SELECT FROM reports WHERE sha256 = hash)
        OR EXISTS (SELECT FROM quotations WHERE pdf_sha256 = hash)
        OR EXISTS (SELECT FROM survey_imports WHERE zip_sha256 = hash)
        OR EXISTS (SELECT FROM firm_exports WHERE sha256 = hash);
$$;
