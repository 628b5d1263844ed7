-- AlterTable
ALTER TABLE "firms" ADD COLUMN     "before_use_days" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "layup_day" TEXT,
ADD COLUMN     "layup_days" INTEGER;

-- AlterTable
ALTER TABLE "findings" ADD COLUMN     "accepted_limit" TEXT,
ADD COLUMN     "accepted_until" DATE,
ADD COLUMN     "due_extended_at" TIMESTAMPTZ(3),
ADD COLUMN     "due_on_set" DATE,
ADD COLUMN     "issued_revision" INTEGER,
ADD COLUMN     "item_states" JSONB NOT NULL DEFAULT '{}',
ADD COLUMN     "items" JSONB NOT NULL DEFAULT '[]';

-- AlterTable
ALTER TABLE "clearances" ADD COLUMN     "items" JSONB NOT NULL DEFAULT '[]',
ADD COLUMN     "limit_text" TEXT,
ADD COLUMN     "limit_until" DATE,
ADD COLUMN     "re_inspection_id" UUID,
ADD COLUMN     "revision" INTEGER,
ADD COLUMN     "worksheet" JSON,
ADD COLUMN     "worksheet_inputs" JSON;

-- AlterTable
ALTER TABLE "clearance_files" ADD COLUMN     "before_photo_id" UUID;

-- CreateTable
CREATE TABLE "due_extensions" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "from_on" DATE,
    "due_on" DATE NOT NULL,
    "reason" TEXT NOT NULL,
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "by_role" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "due_extensions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "finding_comments" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "visible_to" TEXT[],
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "by_role" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "removed_at" TIMESTAMPTZ(3),

    CONSTRAINT "finding_comments_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "re_inspections" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "date" DATE NOT NULL,
    "place" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "by_role" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "re_inspections_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "re_inspection_items" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "re_inspection_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "item_ids" UUID[] DEFAULT ARRAY[]::UUID[],
    "outcome" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "limit_text" TEXT,
    "limit_until" DATE,
    "photo_ids" UUID[] DEFAULT ARRAY[]::UUID[],
    "clearance_id" UUID,
    "state_after" TEXT NOT NULL,

    CONSTRAINT "re_inspection_items_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "findings_accepted_until_idx" ON "findings"("accepted_until");

-- CreateIndex
CREATE INDEX "clearances_re_inspection_id_idx" ON "clearances"("re_inspection_id");

-- CreateIndex
CREATE INDEX "clearance_files_before_photo_id_idx" ON "clearance_files"("before_photo_id");

-- CreateIndex
CREATE INDEX "due_extensions_finding_id_id_idx" ON "due_extensions"("finding_id", "id");

-- CreateIndex
CREATE INDEX "finding_comments_finding_id_id_idx" ON "finding_comments"("finding_id", "id");

-- CreateIndex
CREATE INDEX "re_inspections_survey_id_id_idx" ON "re_inspections"("survey_id", "id");

-- CreateIndex
CREATE INDEX "re_inspection_items_re_inspection_id_ordinal_idx" ON "re_inspection_items"("re_inspection_id", "ordinal");

-- CreateIndex
CREATE INDEX "re_inspection_items_finding_id_idx" ON "re_inspection_items"("finding_id");

-- AddForeignKey
ALTER TABLE "clearances" ADD CONSTRAINT "clearances_re_inspection_id_fkey" FOREIGN KEY ("re_inspection_id") REFERENCES "re_inspections"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clearance_files" ADD CONSTRAINT "clearance_files_before_photo_id_fkey" FOREIGN KEY ("before_photo_id") REFERENCES "photos"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "due_extensions" ADD CONSTRAINT "due_extensions_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_comments" ADD CONSTRAINT "finding_comments_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "re_inspections" ADD CONSTRAINT "re_inspections_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "re_inspection_items" ADD CONSTRAINT "re_inspection_items_re_inspection_id_fkey" FOREIGN KEY ("re_inspection_id") REFERENCES "re_inspections"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "re_inspection_items" ADD CONSTRAINT "re_inspection_items_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Findings issued so far were read in the last full report that holds them.
UPDATE findings AS f SET issued_revision = r.revision
FROM (
    SELECT (listed->>'id')::uuid AS id, max(reports.revision) AS revision
    FROM reports, json_array_elements(reports.snapshot->'findings') AS listed
    WHERE reports.kind = 'full' AND reports.state = 'issued' GROUP BY 1
) AS r
WHERE f.id = r.id AND f.state <> 'draft';

-- Row-level security, as for every table with a firm.
DO $$
DECLARE
    name text;
    entitled constant text :=
        'ANY ((SELECT string_to_array(nullif(current_setting(''app.firm_ids'', true), ''''), '','')::uuid[])::uuid[])';
BEGIN
    FOREACH name IN ARRAY ARRAY['due_extensions', 'finding_comments', 're_inspections', 're_inspection_items'] LOOP
        EXECUTE format('ALTER TABLE public.%I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format(
            'CREATE POLICY own_firms ON public.%I TO garboard_app USING (firm_id = %s) WITH CHECK (firm_id = %s)',
            name, entitled, entitled
        );
    END LOOP;
END
$$;
