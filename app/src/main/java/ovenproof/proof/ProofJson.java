package ovenproof.proof;

import ovenproof.proof.Proof.Claim;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A proof in the JSON contract. */
public final class ProofJson {

  private ProofJson() {}

  public static ObjectNode of(Proof proof) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    ArrayNode claims = root.putArray("claims");
    proof.claims().forEach(claim -> claims.add(node(claim)));
    return root;
  }

  private static ObjectNode node(Claim claim) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("text", claim.text());
    node.put("line", claim.line());
    node.put("column", claim.column());
    if (claim.timecode() != null) {
      node.put("timecode", claim.timecode());
    }
    node.put("kind", claim.kind().word());
    node.put("finding", claim.finding().word());
    node.put("stated", claim.stated());
    node.put("expected", claim.expected());
    ArrayNode evidence = node.putArray("evidence");
    claim.evidence().forEach(evidence::add);
    node.put("why", claim.why());
    return node;
  }
}
