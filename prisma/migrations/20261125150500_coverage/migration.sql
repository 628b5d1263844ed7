-- CreateTable
CREATE TABLE "coverage_answers" (
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "system" TEXT NOT NULL,
    "reached" TEXT,
    "reason" TEXT NOT NULL DEFAULT '',
    "looked_from" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "coverage_answers_pkey" PRIMARY KEY ("survey_id","system")
);

-- CreateTable
CREATE TABLE "inventory_items" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "system" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "maker" TEXT,
    "serial_number" TEXT,
    "place" TEXT,
    "count" INTEGER NOT NULL DEFAULT 1,
    "made_on" DATE,
    "expires_on" DATE,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "inventory_items_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "inventory_items_survey_id_id_idx" ON "inventory_items"("survey_id", "id");

-- CreateIndex
CREATE INDEX "inventory_items_firm_id_expires_on_id_idx" ON "inventory_items"("firm_id", "expires_on", "id");

-- AddForeignKey
ALTER TABLE "coverage_answers" ADD CONSTRAINT "coverage_answers_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inventory_items" ADD CONSTRAINT "inventory_items_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Row-level security, as for every table with a firm.
ALTER TABLE "coverage_answers" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "coverage_answers" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
ALTER TABLE "inventory_items" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "inventory_items" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
