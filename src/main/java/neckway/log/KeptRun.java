package neckway.log;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * A run as it is kept and as it is exported: what is known of it, and its review.
 *
 * @param id names it among all runs
 * @param when it was played, with the offset from UTC that held there
 * @param about the fields of its line beside the review, {@code id} and {@code when} among them
 * @param review its review, format neckway-review/1; empty for a warm-up
 */
record KeptRun(String id, OffsetDateTime when, ObjectNode about, Optional<ObjectNode> review) {}
