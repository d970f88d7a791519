using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Stock;

/// <summary>Pieces of one thickness, wood and grade that no board can give, and boards of one size that would: sawn square, so that they surely do.</summary>
/// <param name="Boards">So many, without faults.</param>
/// <param name="LengthMm">Of each, unusable ends not counted.</param>
/// <param name="Species">Null where any wood serves.</param>
/// <param name="LeastGrade">Null where any board does.</param>
public sealed record Shortfall(
    ImmutableArray<PieceId> PieceIds,
    int Boards,
    double LengthMm,
    double WidthMm,
    double ThicknessMm,
    string? Species,
    string? LeastGrade
);
