-- AlterTable
ALTER TABLE "surveys" ADD COLUMN     "print_costs" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "findings" ADD COLUMN     "cost_basis" TEXT,
ADD COLUMN     "cost_currency" TEXT,
ADD COLUMN     "cost_high" INTEGER,
ADD COLUMN     "cost_low" INTEGER,
ADD COLUMN     "cost_note" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "grading_probability" TEXT,
ADD COLUMN     "grading_severity" INTEGER;

-- A range has both ends, a currency and a basis, or there is none; a grading has both signs or there is none.
ALTER TABLE "findings"
    ADD CONSTRAINT "findings_cost_whole" CHECK (
        num_nulls(cost_low, cost_high, cost_currency, cost_basis) IN (0, 4) AND (cost_low IS NULL OR (cost_low >= 0 AND cost_low <= cost_high))
    ),
    ADD CONSTRAINT "findings_grading_whole" CHECK (num_nulls(grading_severity, grading_probability) IN (0, 2));

-- CreateTable
CREATE TABLE "deleted_findings" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "system" TEXT NOT NULL,
    "urgency" TEXT NOT NULL,
    "record" JSON NOT NULL,
    "deleted_at" TIMESTAMPTZ(3) NOT NULL,
    "deleted_by" TEXT NOT NULL,

    CONSTRAINT "deleted_findings_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "deleted_findings_survey_id_deleted_at_id_idx" ON "deleted_findings"("survey_id", "deleted_at", "id");

-- CreateIndex
CREATE INDEX "deleted_findings_deleted_at_idx" ON "deleted_findings"("deleted_at");

-- AddForeignKey
ALTER TABLE "deleted_findings" ADD CONSTRAINT "deleted_findings_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Row-level security, as for every table with a firm.
ALTER TABLE "deleted_findings" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "deleted_findings" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
