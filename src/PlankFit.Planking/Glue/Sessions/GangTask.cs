using System.Collections.Immutable;

namespace PlankFit.Planking.Glue.Sessions;

/// <summary>Something that so many hands do in so many minutes, without a break.</summary>
/// <param name="After">What must be done before it begins.</param>
public sealed record GangTask(
    string Name,
    double Minutes,
    int Hands,
    ImmutableArray<TaskLink> After
);

/// <summary>A task begins after another has ended, by no less and no more minutes.</summary>
/// <param name="Task">Its place in the list.</param>
/// <param name="MostMinutes">Null where it may wait for ever.</param>
public readonly record struct TaskLink(
    int Task,
    double LeastMinutes = 0,
    double? MostMinutes = null
);
