-- CreateTable
CREATE TABLE "due_reminders" (
    "firm_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "due_on" DATE NOT NULL,
    "days" INTEGER NOT NULL,

    CONSTRAINT "due_reminders_pkey" PRIMARY KEY ("finding_id","due_on","days")
);

-- CreateTable
CREATE TABLE "overdue_rounds" (
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "week" DATE NOT NULL,

    CONSTRAINT "overdue_rounds_pkey" PRIMARY KEY ("survey_id","week")
);

-- AddForeignKey
ALTER TABLE "due_reminders" ADD CONSTRAINT "due_reminders_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "overdue_rounds" ADD CONSTRAINT "overdue_rounds_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

SELECT garboard_add_policies('due_reminders', 'staff');
SELECT garboard_add_policies('overdue_rounds', 'staff');
