-- AlterTable
ALTER TABLE "parties" ADD COLUMN     "client" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "held" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "surveys" ADD COLUMN     "held" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "finding_yards" (
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "party_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,

    CONSTRAINT "finding_yards_pkey" PRIMARY KEY ("finding_id","party_id")
);

-- CreateIndex
CREATE INDEX "finding_yards_party_id_idx" ON "finding_yards"("party_id");

-- CreateIndex
CREATE INDEX "finding_yards_person_id_finding_id_idx" ON "finding_yards"("person_id", "finding_id");

-- AddForeignKey
ALTER TABLE "finding_yards" ADD CONSTRAINT "finding_yards_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_yards" ADD CONSTRAINT "finding_yards_party_id_fkey" FOREIGN KEY ("party_id") REFERENCES "parties"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Row-level security, as for every table with a firm.
ALTER TABLE "finding_yards" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "finding_yards" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
