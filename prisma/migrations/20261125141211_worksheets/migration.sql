-- The order of fields matters to people: a worksheet's outputs are printed in it.
ALTER TABLE "reports" ALTER COLUMN "snapshot" SET DATA TYPE JSON;

-- AlterTable
ALTER TABLE "idempotency_keys" ALTER COLUMN "answer" SET DATA TYPE JSON;

-- CreateTable
CREATE TABLE "worksheets" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "finding_id" UUID,
    "kind" TEXT NOT NULL,
    "kind_version" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "inputs" JSON NOT NULL,
    "result" JSON NOT NULL,
    "verdict" TEXT NOT NULL,
    "printed" BOOLEAN NOT NULL DEFAULT true,
    "issued" JSON,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "worksheets_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "worksheets_survey_id_id_idx" ON "worksheets"("survey_id", "id");

-- CreateIndex
CREATE INDEX "worksheets_finding_id_id_idx" ON "worksheets"("finding_id", "id");

-- AddForeignKey
ALTER TABLE "worksheets" ADD CONSTRAINT "worksheets_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "worksheets" ADD CONSTRAINT "worksheets_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- Row-level security, as for every table with a firm.
ALTER TABLE "worksheets" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "worksheets" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
