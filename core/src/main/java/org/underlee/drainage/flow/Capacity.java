package org.underlee.drainage.flow;

/**
 * What one method says that a part can carry.
 *
 * @param id of the method or table
 * @param accepted whether it may decide; one that may not is shown only
 * @param flow cubic metres per second
 */
public record Capacity(
    String id,
    String name,
    String code,
    String edition,
    Mark mark,
    String source,
    boolean accepted,
    double flow) {}
