namespace PlankFit.Nesting.Rows;

/// <summary>What is to be laid of a problem, and the rows that are known for it.</summary>
/// <param name="Share">All of the problem, or a part of it.</param>
/// <param name="Missing">By item, what leaving one out costs.</param>
internal readonly record struct NestLot(
    NestProblem Problem,
    Share Share,
    double[] Missing,
    RowBook Book
);
