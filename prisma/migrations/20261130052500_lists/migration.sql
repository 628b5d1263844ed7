-- AlterTable
ALTER TABLE "findings" ADD COLUMN     "issued_system" TEXT,
ADD COLUMN     "issued_title" TEXT,
ADD COLUMN     "issued_urgency" TEXT;

-- CreateTable
CREATE TABLE "saved_views" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "page" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "query" JSON NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "saved_views_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "saved_views_person_id_page_name_key" ON "saved_views"("person_id", "page", "name");

-- CreateIndex
CREATE INDEX "surveys_firm_id_state_id_idx" ON "surveys"("firm_id", "state", "id");

-- AddForeignKey
ALTER TABLE "saved_views" ADD CONSTRAINT "saved_views_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A view is its person's alone.
ALTER TABLE "saved_views" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_views ON "saved_views" TO garboard_app
    USING (person_id = (SELECT nullif(current_setting('app.person_id', true), '')::uuid))
    WITH CHECK (person_id = (SELECT nullif(current_setting('app.person_id', true), '')::uuid));

-- What lists filter by and search in stands beside the frozen words: taking those apart for 50 000 rows takes seconds.
CREATE FUNCTION garboard_keep_issued_words() RETURNS trigger
LANGUAGE plpgsql
AS $$
BEGIN
    NEW.issued_title := coalesce(NEW.issued->>'title', NEW.title);
    NEW.issued_system := coalesce(NEW.issued->>'system', NEW.system);
    NEW.issued_urgency := coalesce(NEW.issued->>'urgency', NEW.urgency);
    RETURN NEW;
END
$$;
CREATE TRIGGER keep_issued_words BEFORE INSERT OR UPDATE OF issued, title, system, urgency ON "findings"
    FOR EACH ROW EXECUTE FUNCTION garboard_keep_issued_words();
UPDATE "findings" SET title = title;

-- Recommendations by survey, whole rows of the lists of them: read without touching the table, and without the texts.
CREATE INDEX "findings_recommendations" ON "findings" (survey_id, state, due_on)
    INCLUDE (id, firm_id, number, issued_system, issued_urgency, issued_title)
    WHERE clearing AND state <> 'draft';
-- Those still to be cleared, by firm: what the firm's list of jobs counts.
CREATE INDEX "findings_undecided" ON "findings" (firm_id, survey_id)
    INCLUDE (state, due_on)
    WHERE clearing AND state IN ('open', 'evidence-sent', 'returned');
-- Evidence that waits for a decision: at most one a finding.
CREATE INDEX "clearances_sent" ON "clearances" (finding_id) INCLUDE (sent_at) WHERE state = 'sent';
CREATE INDEX "reviews_asked" ON "reviews" (survey_id) WHERE state = 'asked';
