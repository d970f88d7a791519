using System.Collections.Immutable;

namespace PlankFit.Planking.Glue.Sessions;

/// <summary>A rule that a plan keeps, by the name by which it is told where it cannot be kept.</summary>
public sealed record SessionRule(string Name, ImmutableArray<SessionBound> Bounds);

/// <summary>When a task may begin, minutes: from the beginning of the plan, or from the end of another task.</summary>
/// <param name="After">The other task; null for the beginning of the plan.</param>
/// <param name="Least">Null for none; <paramref name="Most"/> likewise.</param>
public readonly record struct SessionBound(int Task, int? After, double? Least, double? Most);

/// <summary>Tasks, hands and rules of one session.</summary>
/// <param name="Tasks">With the links that are not in question.</param>
/// <param name="Rules">Besides those links, each by itself.</param>
/// <param name="Breaks">When nobody works: from and to, minutes, in order.</param>
public sealed record SessionProblem(
    ImmutableArray<GangTask> Tasks,
    int Hands,
    ImmutableArray<SessionRule> Rules,
    ImmutableArray<(double From, double To)> Breaks
)
{
    public static SessionProblem Of(ImmutableArray<GangTask> tasks, int hands) =>
        new(tasks, hands, [], []);
}
