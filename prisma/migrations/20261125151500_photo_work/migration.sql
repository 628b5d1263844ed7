-- The library looks for words within captions and titles.
CREATE EXTENSION IF NOT EXISTS pg_trgm;

-- AlterTable
ALTER TABLE "photos" ADD COLUMN     "before_photo_id" UUID,
ADD COLUMN     "dhash" TEXT,
ADD COLUMN     "problem" TEXT;

-- CreateTable
CREATE TABLE "photo_uploads" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "file_name" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "taken_at" TIMESTAMPTZ(3),
    "caption" TEXT NOT NULL DEFAULT '',
    "finding_id" UUID,
    "received" INTEGER NOT NULL DEFAULT 0,
    "state" TEXT NOT NULL DEFAULT 'receiving',
    "problem" TEXT,
    "photo_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "photo_uploads_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "photo_uploads_survey_id_idx" ON "photo_uploads"("survey_id");

-- CreateIndex
CREATE INDEX "photo_uploads_state_updated_at_idx" ON "photo_uploads"("state", "updated_at");

-- CreateIndex
CREATE INDEX "findings_firm_id_system_idx" ON "findings"("firm_id", "system");

-- CreateIndex
CREATE INDEX "findings_title_idx" ON "findings" USING GIN ("title" gin_trgm_ops);

-- CreateIndex
CREATE INDEX "photos_firm_id_order_key_idx" ON "photos"("firm_id", "order_key");

-- CreateIndex
CREATE INDEX "photos_before_photo_id_idx" ON "photos"("before_photo_id");

-- CreateIndex
CREATE INDEX "photos_caption_idx" ON "photos" USING GIN ("caption" gin_trgm_ops);

-- AddForeignKey
ALTER TABLE "photos" ADD CONSTRAINT "photos_before_photo_id_fkey" FOREIGN KEY ("before_photo_id") REFERENCES "photos"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo_uploads" ADD CONSTRAINT "photo_uploads_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Row-level security, as for every table with a firm.
ALTER TABLE "photo_uploads" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "photo_uploads" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));

-- Photos whose caption, or a finding's title or system, or boat's name has this in it. With the owner's rights, and so
-- with the same bound on firms by hand: under a policy PostgreSQL may not use an index for operators such as ILIKE.
CREATE FUNCTION garboard_photos_matching(pattern text, systems text[]) RETURNS SETOF uuid
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    WITH entitled AS MATERIALIZED (
        SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[] AS firms
    )
    SELECT p.id FROM photos AS p
    WHERE p.caption ILIKE pattern AND p.firm_id = ANY ((SELECT firms FROM entitled)::uuid[])
    UNION
    SELECT fp.photo_id FROM findings AS f JOIN finding_photos AS fp ON fp.finding_id = f.id
    WHERE f.title ILIKE pattern AND f.firm_id = ANY ((SELECT firms FROM entitled)::uuid[])
    UNION
    SELECT fp.photo_id FROM findings AS f JOIN finding_photos AS fp ON fp.finding_id = f.id
    WHERE f.system = ANY (systems) AND f.firm_id = ANY ((SELECT firms FROM entitled)::uuid[])
    UNION
    SELECT p.id FROM vessels AS v JOIN surveys AS s ON s.vessel_id = v.id JOIN photos AS p ON p.survey_id = s.id
    WHERE v.name ILIKE pattern AND v.firm_id = ANY ((SELECT firms FROM entitled)::uuid[]);
$$;
REVOKE ALL ON FUNCTION garboard_photos_matching(text, text[]) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_photos_matching(text, text[]) TO garboard_app;
