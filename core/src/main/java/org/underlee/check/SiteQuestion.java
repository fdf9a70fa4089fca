package org.underlee.check;

/**
 * What only someone on site can answer.
 *
 * @param text the question
 * @param why what depends on the answer
 * @param source the standard or practice that asks for it
 */
public record SiteQuestion(String text, String why, String source) {}
