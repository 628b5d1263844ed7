-- CreateTable
CREATE TABLE "firm_rates" (
    "firm_id" UUID NOT NULL,
    "currency" TEXT NOT NULL,
    "per_length" INTEGER NOT NULL DEFAULT 0,
    "length_unit" TEXT NOT NULL DEFAULT 'm',
    "per_hour" INTEGER NOT NULL DEFAULT 0,
    "per_distance" INTEGER NOT NULL DEFAULT 0,
    "distance_unit" TEXT NOT NULL DEFAULT 'km',
    "minimum" INTEGER NOT NULL DEFAULT 0,
    "tax_name" TEXT NOT NULL DEFAULT '',
    "tax_rate" INTEGER NOT NULL DEFAULT 0,
    "quotation_days" INTEGER NOT NULL DEFAULT 30,
    "payment_days" INTEGER NOT NULL DEFAULT 14,
    "release_rule" TEXT NOT NULL DEFAULT 'at-once',
    "payment_words" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "firm_rates_pkey" PRIMARY KEY ("firm_id")
);

-- CreateTable
CREATE TABLE "firm_terms" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "saved_at" TIMESTAMPTZ(3) NOT NULL,
    "saved_by_id" UUID,
    "saved_by" TEXT NOT NULL,

    CONSTRAINT "firm_terms_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quotations" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'draft',
    "party_id" UUID,
    "addressee" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "lines" JSON NOT NULL,
    "net" INTEGER NOT NULL,
    "tax" INTEGER NOT NULL,
    "total" INTEGER NOT NULL,
    "scope" TEXT NOT NULL,
    "valid_until" DATE NOT NULL,
    "document" JSON,
    "text" TEXT,
    "text_sha256" TEXT,
    "sent_at" TIMESTAMPTZ(3),
    "decided_at" TIMESTAMPTZ(3),
    "decided_by_id" UUID,
    "decided_by" TEXT,
    "decided_from" TEXT,
    "reason" TEXT NOT NULL DEFAULT '',
    "pdf_sha256" TEXT,
    "pdf_bytes" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "quotations_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "visits" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'arranged',
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "place" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "sequence" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "visits_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "visit_asks" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "visit_id" UUID NOT NULL,
    "party_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "answer" TEXT NOT NULL DEFAULT 'asked',
    "note" TEXT NOT NULL DEFAULT '',
    "answered_at" TIMESTAMPTZ(3),

    CONSTRAINT "visit_asks_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "calendar_feeds" (
    "person_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "last_read_at" TIMESTAMPTZ(3),

    CONSTRAINT "calendar_feeds_pkey" PRIMARY KEY ("person_id")
);

-- CreateTable
CREATE TABLE "invoices" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "quotation_id" UUID,
    "number" TEXT,
    "state" TEXT NOT NULL DEFAULT 'draft',
    "bill_to" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "lines" JSON NOT NULL,
    "net" INTEGER NOT NULL,
    "tax" INTEGER NOT NULL,
    "total" INTEGER NOT NULL,
    "paid" INTEGER NOT NULL DEFAULT 0,
    "tax_name" TEXT NOT NULL,
    "payment_words" TEXT NOT NULL DEFAULT '',
    "issued_on" DATE,
    "due_on" DATE,
    "reason" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "invoices_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoice_counters" (
    "firm_id" UUID NOT NULL,
    "year" INTEGER NOT NULL,
    "last" INTEGER NOT NULL,

    CONSTRAINT "invoice_counters_pkey" PRIMARY KEY ("firm_id","year")
);

-- CreateTable
CREATE TABLE "invoice_payments" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "invoice_id" UUID NOT NULL,
    "amount" INTEGER NOT NULL,
    "paid_on" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "recorded_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "invoice_payments_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "survey_releases" (
    "survey_id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "rule" TEXT NOT NULL,
    "word_at" TIMESTAMPTZ(3),
    "word_by" TEXT,
    "reason" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "survey_releases_pkey" PRIMARY KEY ("survey_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "firm_terms_firm_id_version_key" ON "firm_terms"("firm_id", "version");

-- CreateIndex
CREATE INDEX "quotations_pdf_sha256_idx" ON "quotations"("pdf_sha256");

-- CreateIndex
CREATE UNIQUE INDEX "quotations_survey_id_revision_key" ON "quotations"("survey_id", "revision");

-- CreateIndex
CREATE INDEX "visits_survey_id_starts_at_idx" ON "visits"("survey_id", "starts_at");

-- CreateIndex
CREATE INDEX "visits_firm_id_ends_at_idx" ON "visits"("firm_id", "ends_at");

-- CreateIndex
CREATE INDEX "visit_asks_person_id_visit_id_idx" ON "visit_asks"("person_id", "visit_id");

-- CreateIndex
CREATE UNIQUE INDEX "visit_asks_visit_id_party_id_key" ON "visit_asks"("visit_id", "party_id");

-- CreateIndex
CREATE UNIQUE INDEX "calendar_feeds_token_hash_key" ON "calendar_feeds"("token_hash");

-- CreateIndex
CREATE INDEX "invoices_survey_id_id_idx" ON "invoices"("survey_id", "id");

-- CreateIndex
CREATE INDEX "invoices_firm_id_id_idx" ON "invoices"("firm_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "invoices_firm_id_number_key" ON "invoices"("firm_id", "number");

-- CreateIndex
CREATE INDEX "invoice_payments_invoice_id_id_idx" ON "invoice_payments"("invoice_id", "id");

-- AddForeignKey
ALTER TABLE "firm_rates" ADD CONSTRAINT "firm_rates_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "firm_terms" ADD CONSTRAINT "firm_terms_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quotations" ADD CONSTRAINT "quotations_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visits" ADD CONSTRAINT "visits_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit_asks" ADD CONSTRAINT "visit_asks_visit_id_fkey" FOREIGN KEY ("visit_id") REFERENCES "visits"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit_asks" ADD CONSTRAINT "visit_asks_party_id_fkey" FOREIGN KEY ("party_id") REFERENCES "parties"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calendar_feeds" ADD CONSTRAINT "calendar_feeds_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoices" ADD CONSTRAINT "invoices_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoices" ADD CONSTRAINT "invoices_quotation_id_fkey" FOREIGN KEY ("quotation_id") REFERENCES "quotations"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice_payments" ADD CONSTRAINT "invoice_payments_invoice_id_fkey" FOREIGN KEY ("invoice_id") REFERENCES "invoices"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "survey_releases" ADD CONSTRAINT "survey_releases_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;


-- Row-level security. Rates, terms, ledgers and rules of handing over are the firm's alone.
SELECT garboard_add_policies('firm_rates', 'staff');
SELECT garboard_add_policies('firm_terms', 'staff');
SELECT garboard_add_policies('quotations', 'staff');
SELECT garboard_add_policies('visits', 'staff');
SELECT garboard_add_policies('visit_asks', 'staff');
SELECT garboard_add_policies('invoices', 'staff');
SELECT garboard_add_policies('invoice_counters', 'staff');
SELECT garboard_add_policies('invoice_payments', 'staff');
SELECT garboard_add_policies('survey_releases', 'staff');

-- Who pays reads what was sent, and decides on a quotation without changing a word of it.
CREATE POLICY party_select ON quotations FOR SELECT TO garboard_person USING (
    state <> 'draft'
    AND EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = quotations.survey_id AND m.client)
);
CREATE POLICY party_update ON quotations FOR UPDATE TO garboard_person
    USING (
        state = 'sent'
        AND EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = quotations.survey_id AND m.client)
    )
    WITH CHECK (state IN ('accepted', 'declined'));
CREATE TRIGGER kept BEFORE UPDATE ON quotations FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns(
        'id', 'firm_id', 'survey_id', 'revision', 'party_id', 'addressee', 'currency', 'lines', 'net', 'tax', 'total',
        'scope', 'valid_until', 'document', 'text', 'text_sha256', 'sent_at', 'pdf_sha256', 'pdf_bytes', 'created_at'
    );
CREATE POLICY party_select ON invoices FOR SELECT TO garboard_person USING (
    state <> 'draft' AND EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = invoices.survey_id AND m.client)
);

-- When and where the boat is looked at concerns those who open, lift or move her, and those for whom it is done.
CREATE POLICY party_select ON visits FOR SELECT TO garboard_person USING (EXISTS (
    SELECT FROM my_parties AS m
    WHERE m.survey_id = visits.survey_id AND m.role IN ('owner', 'buyer', 'broker', 'yard')
));
CREATE POLICY party_select ON visit_asks FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.id = visit_asks.party_id));
CREATE POLICY party_update ON visit_asks FOR UPDATE TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.id = visit_asks.party_id));
CREATE TRIGGER kept BEFORE UPDATE ON visit_asks FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns(
        'id', 'firm_id', 'survey_id', 'visit_id', 'party_id', 'person_id', 'name', 'role'
    );

-- A calendar's address is its person's alone.
ALTER TABLE calendar_feeds ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_person ON calendar_feeds TO garboard_app
    USING (person_id = nullif(current_setting('app.person_id', true), '')::uuid)
    WITH CHECK (person_id = nullif(current_setting('app.person_id', true), '')::uuid);

-- Whose calendar has this secret address, what they are in which firms, and all firms that know them. Notes that it
-- was read, to the minute, so that polling programs write little.
CREATE FUNCTION garboard_calendar_feed(token_hash text, at timestamptz)
RETURNS TABLE (person_id uuid, name text, email text, memberships jsonb, firm_ids uuid[])
LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
#variable_conflict use_column
BEGIN
    UPDATE calendar_feeds AS f SET last_read_at = garboard_calendar_feed.at
    WHERE f.token_hash = garboard_calendar_feed.token_hash
        AND (f.last_read_at IS NULL OR f.last_read_at < garboard_calendar_feed.at - interval '1 minute');
    RETURN QUERY
    SELECT
        people.id,
        people.name,
        people.email,
        (
            SELECT coalesce(jsonb_agg(jsonb_build_object('firmId', m.firm_id, 'role', m.role) ORDER BY m.firm_id), '[]')
            FROM firm_members AS m WHERE m.person_id = people.id
        ),
        garboard_firms_of(people.id)
    FROM calendar_feeds AS f JOIN people ON people.id = f.person_id
    WHERE f.token_hash = garboard_calendar_feed.token_hash;
END
$$;
REVOKE ALL ON FUNCTION garboard_calendar_feed(text, timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_calendar_feed(text, timestamptz) TO garboard_app;

-- What was issued before there were rules was handed over at once, and stays so.
INSERT INTO survey_releases (survey_id, firm_id, rule)
SELECT id, firm_id, 'at-once' FROM surveys WHERE issued_at IS NOT NULL;

-- The PDF of accepted terms is an object in use too.
CREATE OR REPLACE FUNCTION garboard_object_in_use(hash text) RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM photos WHERE hash IN (sha256, thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM report_photos WHERE hash IN (thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM clearance_files WHERE hash IN (sha256, thumb_hash, screen_hash))
        OR EXISTS (SELECT FROM photo_prints WHERE sha256 = hash)
        OR EXISTS (SELECT FROM reports WHERE sha256 = hash)
        OR EXISTS (SELECT FROM quotations WHERE pdf_sha256 = hash);
$$;
