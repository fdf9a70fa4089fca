package org.underlee.kit;

import java.util.List;

/**
 * Something to buy: a formed length, a sheet, a fitting, a fastener or a roll.
 *
 * @param id {@code rail-100}
 * @param description as on a shopping list
 * @param unit what it is counted in: {@code length}, {@code piece}, {@code sheet}, {@code roll}
 * @param stockLengths the lengths it is sold in, metres; empty for what is counted by the piece
 * @param material the kit material's id
 * @param thickness of its sheet, metres; zero where it is not made of sheet
 * @param source where the numbers come from
 */
public record StockItem(
    String id,
    String description,
    String unit,
    List<Double> stockLengths,
    String material,
    double thickness,
    String source) {}
