-- AlterTable
ALTER TABLE "firms" ADD COLUMN     "review_required" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "findings" ADD COLUMN     "withdrawn_at" TIMESTAMPTZ(3),
ADD COLUMN     "withdrawn_by" TEXT,
ADD COLUMN     "withdrawn_reason" TEXT;

-- AlterTable
ALTER TABLE "reports" ADD COLUMN     "changes" JSON,
ADD COLUMN     "finding_id" UUID,
ADD COLUMN     "preview" BOOLEAN NOT NULL DEFAULT false,
ALTER COLUMN "revision" DROP NOT NULL;

-- CreateTable
CREATE TABLE "reviews" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'asked',
    "note" TEXT NOT NULL DEFAULT '',
    "asked_by_id" UUID,
    "asked_by_name" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "reviewer_id" UUID,
    "reviewer_name" TEXT,
    "decided_by_id" UUID,
    "decided_by" TEXT,
    "decided_at" TIMESTAMPTZ(3),
    "reason" TEXT NOT NULL DEFAULT '',
    "record" TEXT,

    CONSTRAINT "reviews_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "review_comments" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "finding_id" UUID,
    "reply_to_id" UUID,
    "text" TEXT NOT NULL,
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "by_role" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "settled_at" TIMESTAMPTZ(3),
    "settled_by" TEXT,

    CONSTRAINT "review_comments_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "reviews_survey_id_id_idx" ON "reviews"("survey_id", "id");

-- CreateIndex
CREATE INDEX "review_comments_survey_id_id_idx" ON "review_comments"("survey_id", "id");

-- CreateIndex
CREATE INDEX "reports_preview_created_at_idx" ON "reports"("preview", "created_at");

-- AddForeignKey
ALTER TABLE "reviews" ADD CONSTRAINT "reviews_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "review_comments" ADD CONSTRAINT "review_comments_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "review_comments" ADD CONSTRAINT "review_comments_reply_to_id_fkey" FOREIGN KEY ("reply_to_id") REFERENCES "review_comments"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A draft to look at is never issued and has no number; whatever is made or issued as a document has one.
ALTER TABLE "reports" ADD CONSTRAINT "reports_number_check" CHECK (
    CASE WHEN preview THEN revision IS NULL AND state <> 'issued' AND verification_code IS NULL
         ELSE state <> 'ready' AND finding_id IS NULL AND (revision IS NOT NULL OR state = 'failed') END);

-- Row-level security, as for every table with a firm.
ALTER TABLE "reviews" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "reviews" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));

ALTER TABLE "review_comments" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "review_comments" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
