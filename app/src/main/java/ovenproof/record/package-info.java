/**
 * A campaign with its published verdict as one bag (BagIt, RFC 8493) that anyone can check and
 * compute again.
 *
 * <p><b>Where to start.</b> {@link ovenproof.record.BagExport} makes a bag, {@link
 * ovenproof.record.Bag} opens one, {@link ovenproof.record.Verification} computes its verdict
 * again.
 *
 * <p><b>The trap.</b> A bag comes from outside. Nothing in it is followed, unpacked or believed
 * before its names, sizes and fingerprints have been looked at.
 */
@NullMarked
package ovenproof.record;

import org.jspecify.annotations.NullMarked;
