-- AlterTable
ALTER TABLE "people" ADD COLUMN     "language" TEXT NOT NULL DEFAULT 'en-GB',
ADD COLUMN     "time_zone" TEXT,
ADD COLUMN     "mail_problem" TEXT,
ADD COLUMN     "mail_problem_at" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "notices" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "event_id" UUID NOT NULL,
    "survey_id" UUID,
    "finding_id" UUID,
    "kind" TEXT NOT NULL,
    "topic" TEXT NOT NULL,
    "facts" JSON NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "read_at" TIMESTAMPTZ(3),
    "mail_after" TIMESTAMPTZ(3),
    "mail_id" UUID,

    CONSTRAINT "notices_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "mails" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "firm_ids" UUID[],
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "next_attempt_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "sent_at" TIMESTAMPTZ(3),
    "problem" TEXT,

    CONSTRAINT "mails_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "notice_preferences" (
    "person_id" UUID NOT NULL,
    "topic" TEXT NOT NULL,
    "how" TEXT NOT NULL,

    CONSTRAINT "notice_preferences_pkey" PRIMARY KEY ("person_id","topic")
);

-- CreateIndex
CREATE UNIQUE INDEX "notices_event_id_person_id_key" ON "notices"("event_id", "person_id");

-- CreateIndex
CREATE INDEX "notices_person_id_id_idx" ON "notices"("person_id", "id");

-- CreateIndex
CREATE INDEX "notices_person_id_read_at_idx" ON "notices"("person_id", "read_at");

-- CreateIndex
CREATE INDEX "notices_mail_after_idx" ON "notices"("mail_after");

-- CreateIndex
CREATE INDEX "notices_mail_id_idx" ON "notices"("mail_id");

-- CreateIndex
CREATE INDEX "notices_survey_id_idx" ON "notices"("survey_id");

-- CreateIndex
CREATE INDEX "mails_state_next_attempt_at_idx" ON "mails"("state", "next_attempt_at");

-- CreateIndex
CREATE INDEX "mails_person_id_created_at_idx" ON "mails"("person_id", "created_at");

-- AddForeignKey
ALTER TABLE "notices" ADD CONSTRAINT "notices_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notices" ADD CONSTRAINT "notices_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notices" ADD CONSTRAINT "notices_mail_id_fkey" FOREIGN KEY ("mail_id") REFERENCES "mails"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mails" ADD CONSTRAINT "mails_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_preferences" ADD CONSTRAINT "notice_preferences_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A notice is its person's own, colleagues don't see it; a job of Garboard's, which acts for no person, sees those of
-- the firms it works for.
ALTER TABLE "notices" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_notices ON "notices" TO garboard_app
    USING (
        person_id = (SELECT nullif(current_setting('app.person_id', true), '')::uuid)
        OR ((SELECT nullif(current_setting('app.person_id', true), '')) IS NULL
            AND firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[])))
    WITH CHECK (
        person_id = (SELECT nullif(current_setting('app.person_id', true), '')::uuid)
        OR ((SELECT nullif(current_setting('app.person_id', true), '')) IS NULL
            AND firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[])));
