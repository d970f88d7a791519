using System.Collections.Immutable;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// Kinds of strip that take nearly the same things are looked at together, by what bounds the rows of the one among them that takes most: no row of the others is
/// dearer, and working out bounds is most of the work.
/// </summary>
internal static class LeadKinds
{
    /// <summary>One kind stands in for another of its class that takes no less than this part of its things.</summary>
    private const double Nearly = 0.6;

    /// <returns>By kind, the one that stands in for it: often itself.</returns>
    public static ImmutableArray<int> Of(NestProblem problem) =>
        [
            .. Enumerable
                .Range(0, problem.Kinds)
                .Select(k =>
                    Enumerable
                        .Range(0, problem.Sorts)
                        .Select(s => problem.Kind(problem.ClassOf(k), s))
                        .Where(lead => lead == k || StandsIn(problem, lead, k))
                        .OrderByDescending(lead => problem.Serving[lead].Length)
                        .ThenBy(lead => lead)
                        .First()
                ),
        ];

    /// <summary>Without what the kind does not take, the rows of the lead are just those of the kind.</summary>
    private static bool StandsIn(NestProblem problem, int lead, int kind)
    {
        ImmutableArray<int> all = problem.Serving[lead],
            some = problem.Serving[kind];
        return some.Length >= Nearly * all.Length
            && some.All(i =>
                problem.Serves(lead, i)
                && problem.Items[i].Parts.All(p => !IsOut(problem, lead, kind, p))
            )
            && all.Where(i => !problem.Serves(kind, i))
                .All(i => problem.Items[i].Parts.Any(p => IsOut(problem, lead, kind, p)));
    }

    /// <summary>A piece that the lead takes, and the kind that it stands in for does not.</summary>
    public static bool IsOut(NestProblem problem, int lead, int kind, int item) =>
        problem.Serves(lead, item) && !problem.Serves(kind, item);
}
