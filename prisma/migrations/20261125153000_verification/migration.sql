-- AlterTable
ALTER TABLE "reports" ADD COLUMN     "renderer" TEXT,
ADD COLUMN     "signed_by" TEXT,
ADD COLUMN     "verification_code" TEXT;

-- CreateTable
CREATE TABLE "signing_keys" (
    "firm_id" UUID NOT NULL,
    "certificates" TEXT[],
    "sealed_key" BYTEA NOT NULL,
    "subject" TEXT NOT NULL,
    "issuer" TEXT NOT NULL,
    "self_signed" BOOLEAN NOT NULL,
    "serial_number" TEXT NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "algorithm" TEXT NOT NULL,
    "valid_from" TIMESTAMPTZ(3) NOT NULL,
    "valid_until" TIMESTAMPTZ(3) NOT NULL,
    "added_at" TIMESTAMPTZ(3) NOT NULL,
    "added_by" TEXT NOT NULL,

    CONSTRAINT "signing_keys_pkey" PRIMARY KEY ("firm_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "reports_verification_code_key" ON "reports"("verification_code");

-- CreateIndex
CREATE INDEX "reports_sha256_idx" ON "reports"("sha256");

-- AddForeignKey
ALTER TABLE "signing_keys" ADD CONSTRAINT "signing_keys_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;


-- Row-level security, as for every table with a firm.
ALTER TABLE "signing_keys" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "signing_keys" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));

-- What anybody may ask: whether a document with this code, or this very file, was issued here and still stands.
-- Answered without knowing the firm, so with the owner's rights; nothing of the contents leaves.
CREATE FUNCTION garboard_verify(code text, hash text)
RETURNS TABLE (
    firm_name text, kind text, revision integer, issued_at timestamptz, sha256 text,
    later_revision integer, later_issued_at timestamptz
)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT firms.name, r.kind, r.revision, r.issued_at, r.sha256, later.revision, later.issued_at
    FROM reports AS r
    JOIN firms ON firms.id = r.firm_id
    LEFT JOIN LATERAL (
        SELECT l.revision, l.issued_at FROM reports AS l
        WHERE l.survey_id = r.survey_id AND l.kind = r.kind AND l.state = 'issued' AND l.revision > r.revision
        ORDER BY l.revision DESC LIMIT 1
    ) AS later ON true
    WHERE r.state = 'issued' AND (r.verification_code = code OR r.sha256 = hash)
    LIMIT 1;
$$;

REVOKE ALL ON FUNCTION garboard_verify(text, text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_verify(text, text) TO garboard_app;
