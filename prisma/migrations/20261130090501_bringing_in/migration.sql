-- CreateTable
CREATE TABLE "survey_imports" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "file_name" TEXT NOT NULL,
    "sheet" JSON NOT NULL,
    "zip_name" TEXT,
    "zip_sha256" TEXT,
    "state" TEXT NOT NULL DEFAULT 'checked',
    "choices" JSONB NOT NULL DEFAULT '{}',
    "problem" TEXT,
    "outcome" JSON,
    "made_by_id" UUID NOT NULL,
    "made_by_name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "survey_imports_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "import_photos" (
    "firm_id" UUID NOT NULL,
    "import_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "bytes" BIGINT NOT NULL DEFAULT 0,
    "photo_id" UUID,
    "problem" TEXT,

    CONSTRAINT "import_photos_pkey" PRIMARY KEY ("import_id","name")
);

-- CreateTable
CREATE TABLE "imported_rows" (
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "finding_id" UUID NOT NULL,

    CONSTRAINT "imported_rows_pkey" PRIMARY KEY ("survey_id","fingerprint")
);

-- CreateIndex
CREATE INDEX "survey_imports_survey_id_idx" ON "survey_imports"("survey_id");

-- CreateIndex
CREATE INDEX "survey_imports_state_updated_at_idx" ON "survey_imports"("state", "updated_at");

-- CreateIndex
CREATE INDEX "survey_imports_zip_sha256_idx" ON "survey_imports"("zip_sha256");

-- CreateIndex
CREATE INDEX "import_photos_import_id_ordinal_idx" ON "import_photos"("import_id", "ordinal");

-- AddForeignKey
ALTER TABLE "survey_imports" ADD CONSTRAINT "survey_imports_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import_photos" ADD CONSTRAINT "import_photos_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "survey_imports"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "imported_rows" ADD CONSTRAINT "imported_rows_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Row-level security: the firm's staff alone.
SELECT garboard_add_policies('survey_imports', 'staff');
SELECT garboard_add_policies('import_photos', 'staff');
SELECT garboard_add_policies('imported_rows', 'staff');

-- The ZIP of an import is an object in use until its photos were taken out.
CREATE OR REPLACE FUNCTION garboard_object_in_use(hash text) RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM photos WHERE hash IN (sha256, thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM report_photos WHERE hash IN (thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM clearance_files WHERE hash IN (sha256, thumb_hash, screen_hash))
        OR EXISTS (SELECT FROM photo_prints WHERE sha256 = hash)
        OR EXISTS (SELECT FROM reports WHERE sha256 = hash)
        OR EXISTS (SELECT FROM quotations WHERE pdf_sha256 = hash)
        OR EXISTS (SELECT FROM survey_imports WHERE zip_sha256 = hash);
$$;
