using System.Collections.Immutable;
using PlankFit.Export.Solids;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;

namespace PlankFit.Pages.Sessions;

/// <summary>A text of the job that planks were laid by: what the picture is of.</summary>
/// <param name="Said">What the change did, against the plan before it was begun.</param>
internal sealed record Laid(
    int Turn,
    BottomPlan Plan,
    ImmutableArray<Finding> Findings,
    ImmutableArray<string> Said
)
{
    private readonly Lazy<ImmutableArray<PlankSolid>> solids = new(() => PlanSolids.Of(Plan));
    private readonly Lazy<byte[]> packed = new(() => PackedSolids.Of(PlanSolids.Of(Plan)));

    public ImmutableArray<PlankSolid> Solids => solids.Value;

    /// <summary>The same as bytes.</summary>
    public byte[] Packed => packed.Value;
}
