using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>How planks are to be sawn out of stock: the job's [nest].</summary>
/// <param name="Boards">The rack's and the yard's, in the order of their files.</param>
public sealed record NestSpec(
    ImmutableArray<StockBoard> Boards,
    SawAllowance Trim,
    SizeAllowance Sizes,
    LeastOffcut Offcuts,
    LayingRules Laying,
    GradeRules Grading,
    NestEffort Effort
)
{
    /// <summary>What holds where a job names its stock and nothing else. Kerf 3 mm and the rest are proposals, no source.</summary>
    public static readonly NestSpec Usual = new(
        [],
        new(KerfMm: 3, EdgeMm: 0, EndMm: 0),
        new(PlaneMm: 0, ThickerMm: 1, ProudMm: 0.2),
        new(LengthMm: 300, WidthMm: 40),
        new(TurnEndForEnd: true, TurnFaceForFace: false, PairsTogether: false),
        new([], MasterGrade: null, ImmutableDictionary<string, string>.Empty),
        new(NestObjective.Area, Seed: 1, Seconds: 10, Rounds: null)
    );

    /// <inheritdoc cref="SawAllowance.KerfMm"/>
    public double KerfMm
    {
        get => Trim.KerfMm;
        init => Trim = Trim with { KerfMm = value };
    }

    /// <inheritdoc cref="SawAllowance.EdgeMm"/>
    public double EdgeMm
    {
        get => Trim.EdgeMm;
        init => Trim = Trim with { EdgeMm = value };
    }

    /// <inheritdoc cref="SawAllowance.EndMm"/>
    public double EndMm
    {
        get => Trim.EndMm;
        init => Trim = Trim with { EndMm = value };
    }

    /// <inheritdoc cref="SizeAllowance.PlaneMm"/>
    public double PlaneMm
    {
        get => Sizes.PlaneMm;
        init => Sizes = Sizes with { PlaneMm = value };
    }

    /// <inheritdoc cref="SizeAllowance.ThickerMm"/>
    public double ThickerMm
    {
        get => Sizes.ThickerMm;
        init => Sizes = Sizes with { ThickerMm = value };
    }

    /// <inheritdoc cref="SizeAllowance.ProudMm"/>
    public double ProudMm
    {
        get => Sizes.ProudMm;
        init => Sizes = Sizes with { ProudMm = value };
    }

    /// <inheritdoc cref="LeastOffcut.LengthMm"/>
    public double LeastOffcutMm
    {
        get => Offcuts.LengthMm;
        init => Offcuts = Offcuts with { LengthMm = value };
    }

    /// <inheritdoc cref="LeastOffcut.WidthMm"/>
    public double LeastOffcutWidthMm
    {
        get => Offcuts.WidthMm;
        init => Offcuts = Offcuts with { WidthMm = value };
    }

    /// <inheritdoc cref="LayingRules.TurnEndForEnd"/>
    public bool TurnEndForEnd
    {
        get => Laying.TurnEndForEnd;
        init => Laying = Laying with { TurnEndForEnd = value };
    }

    /// <inheritdoc cref="LayingRules.TurnFaceForFace"/>
    public bool TurnFaceForFace
    {
        get => Laying.TurnFaceForFace;
        init => Laying = Laying with { TurnFaceForFace = value };
    }

    /// <inheritdoc cref="LayingRules.PairsTogether"/>
    public bool PairsTogether
    {
        get => Laying.PairsTogether;
        init => Laying = Laying with { PairsTogether = value };
    }

    /// <inheritdoc cref="GradeRules.Grades"/>
    public ImmutableArray<string> Grades
    {
        get => Grading.Grades;
        init => Grading = Grading with { Grades = value };
    }

    /// <inheritdoc cref="GradeRules.MasterGrade"/>
    public string? MasterGrade
    {
        get => Grading.MasterGrade;
        init => Grading = Grading with { MasterGrade = value };
    }

    /// <inheritdoc cref="GradeRules.LeastGrades"/>
    public ImmutableDictionary<string, string> LeastGrades
    {
        get => Grading.LeastGrades;
        init => Grading = Grading with { LeastGrades = value };
    }

    /// <inheritdoc cref="NestEffort.Objective"/>
    public NestObjective Objective
    {
        get => Effort.Objective;
        init => Effort = Effort with { Objective = value };
    }

    /// <inheritdoc cref="NestEffort.Seed"/>
    public int Seed
    {
        get => Effort.Seed;
        init => Effort = Effort with { Seed = value };
    }

    /// <inheritdoc cref="NestEffort.Seconds"/>
    public double Seconds
    {
        get => Effort.Seconds;
        init => Effort = Effort with { Seconds = value };
    }

    /// <inheritdoc cref="NestEffort.Rounds"/>
    public int? Rounds
    {
        get => Effort.Rounds;
        init => Effort = Effort with { Rounds = value };
    }

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
