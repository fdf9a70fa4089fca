package org.underlee.server;

import java.time.Instant;

/**
 * One state of a project.
 *
 * @param oid the server's number for it
 * @param number counted from 1 within the project
 * @param instances how many the model has
 */
public record Revision(
    long oid, int number, String user, Instant at, String comment, long instances) {}
