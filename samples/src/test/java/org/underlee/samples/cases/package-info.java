/**
 * Ways of framing a deck, each made at random by seed together with the truth about it, and the
 * table of how many of them a survey gets right. To add one: a class per case, entered in the list
 * that it belongs to.
 */
package org.underlee.samples.cases;
