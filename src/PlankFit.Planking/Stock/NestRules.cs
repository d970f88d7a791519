using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>What the saw takes, and what is taken off a board before anything lies in it.</summary>
/// <param name="KerfMm">What the saw takes.</param>
/// <param name="EdgeMm">Taken off each long edge of a board before anything lies in it.</param>
/// <param name="EndMm">Taken off each end of a board, besides what its row calls unusable.</param>
public readonly record struct SawAllowance(double KerfMm, double EdgeMm, double EndMm);

/// <summary>How a board's size may differ from what lies in it.</summary>
/// <param name="PlaneMm">How much thicker than its layer a board must be, to be planed.</param>
/// <param name="ThickerMm">How much thicker than that it may be and still serve.</param>
/// <param name="ProudMm">By how much a piece may be wider than the board that it lies in: the board's own edge makes up for it.</param>
public readonly record struct SizeAllowance(double PlaneMm, double ThickerMm, double ProudMm);

/// <summary>What is kept of what is left over.</summary>
/// <param name="LengthMm">The shortest piece left over that is kept, <paramref name="WidthMm"/> the narrowest.</param>
public readonly record struct LeastOffcut(double LengthMm, double WidthMm);

/// <summary>How pieces may lie.</summary>
/// <param name="TurnEndForEnd">Pieces may lie turned end for end.</param>
/// <param name="TurnFaceForFace">Pieces may lie with their outer face down, where neither bevels nor marked faces forbid it.</param>
/// <param name="PairsTogether">A plank and its twin of the other side come from the same board.</param>
public readonly record struct LayingRules(
    bool TurnEndForEnd,
    bool TurnFaceForFace,
    bool PairsTogether
);

/// <summary>The grades of boards, and which of them planks want.</summary>
/// <param name="Grades">Best first.</param>
/// <param name="MasterGrade">The least grade for master planks; null where any will do.</param>
/// <param name="LeastGrades">By the name of a layer, the least grade for its planks.</param>
public readonly record struct GradeRules(
    ImmutableArray<string> Grades,
    string? MasterGrade,
    ImmutableDictionary<string, string> LeastGrades
);

/// <summary>What a plan is made for, and how long it is made better.</summary>
/// <param name="Seconds">How long the plan may be improved, where <paramref name="Rounds"/> is null.</param>
/// <param name="Rounds">A fixed effort: with it the same input gives the same plan.</param>
public readonly record struct NestEffort(
    NestObjective Objective,
    int Seed,
    double Seconds,
    int? Rounds
);
