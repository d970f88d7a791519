using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>How planks are to be sawn out of stock: the job's [nest].</summary>
/// <param name="Boards">The rack's and the yard's, in the order of their files.</param>
/// <param name="KerfMm">What the saw takes.</param>
/// <param name="EdgeMm">Taken off each long edge of a board before anything lies in it.</param>
/// <param name="EndMm">Taken off each end of a board, besides what its row calls unusable.</param>
/// <param name="PlaneMm">How much thicker than its layer a board must be, to be planed.</param>
/// <param name="ThickerMm">How much thicker than that it may be and still serve.</param>
/// <param name="ProudMm">By how much a piece may be wider than the board that it lies in: the board's own edge makes up for it.</param>
/// <param name="LeastOffcutMm">The shortest piece left over that is kept, <paramref name="LeastOffcutWidthMm"/> the narrowest.</param>
/// <param name="TurnEndForEnd">Pieces may lie turned end for end.</param>
/// <param name="TurnFaceForFace">Pieces may lie with their outer face down, where neither bevels nor marked faces forbid it.</param>
/// <param name="PairsTogether">A plank and its twin of the other side come from the same board.</param>
/// <param name="Grades">Best first.</param>
/// <param name="MasterGrade">The least grade for master planks; null where any will do.</param>
/// <param name="LeastGrades">By the name of a layer, the least grade for its planks.</param>
/// <param name="Seconds">How long the plan may be improved, where <paramref name="Rounds"/> is null.</param>
/// <param name="Rounds">A fixed effort: with it the same input gives the same plan.</param>
public sealed record NestSpec(
    ImmutableArray<StockBoard> Boards,
    double KerfMm,
    double EdgeMm,
    double EndMm,
    double PlaneMm,
    double ThickerMm,
    double ProudMm,
    double LeastOffcutMm,
    double LeastOffcutWidthMm,
    bool TurnEndForEnd,
    bool TurnFaceForFace,
    bool PairsTogether,
    ImmutableArray<string> Grades,
    string? MasterGrade,
    ImmutableDictionary<string, string> LeastGrades,
    NestObjective Objective,
    int Seed,
    double Seconds,
    int? Rounds
)
{
    /// <summary>What holds where a job names its stock and nothing else. Kerf 3 mm and the rest are proposals, no source.</summary>
    public static readonly NestSpec Usual = new(
        [],
        KerfMm: 3,
        EdgeMm: 0,
        EndMm: 0,
        PlaneMm: 0,
        ThickerMm: 1,
        ProudMm: 0.2,
        LeastOffcutMm: 300,
        LeastOffcutWidthMm: 40,
        TurnEndForEnd: true,
        TurnFaceForFace: false,
        PairsTogether: false,
        [],
        null,
        ImmutableDictionary<string, string>.Empty,
        NestObjective.Area,
        Seed: 1,
        Seconds: 10,
        Rounds: null
    );

    /// <summary>What the saw is trusted with when these boards are cut.</summary>
    public SawTolerances Saw { get; init; } = SawTolerances.Usual;

    /// <summary>
    /// The least that is to stand beyond the net end everywhere where an end left long is sawn at its neighbour's angle; null where that is all that it is left
    /// long by, and then such ends only grow.
    /// </summary>
    public double? LeastOverhangMm { get; init; }

    /// <summary>What cutting into a board counts, as the objective has it: its area in mm², or its price, nought where it has none.</summary>
    public double CostOf(StockBoard board) =>
        Objective == NestObjective.Cost ? (double)(board.Price ?? 0) : board.AreaMm2;
}

/// <summary>What is made least.</summary>
public enum NestObjective
{
    /// <summary>The area of all boards that are cut into.</summary>
    Area,

    /// <summary>Their price.</summary>
    Cost,
}
