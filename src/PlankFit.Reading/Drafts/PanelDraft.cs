using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Drafts;

/// <summary>A panel besides the bottom as read: its layers, from the inside out, and its ends.</summary>
/// <param name="WidthsAt">Where each of <paramref name="Layers"/> says how wide it is.</param>
public sealed record PanelDraft(
    Panel Panel,
    ImmutableArray<LayerSpec> Layers,
    EndRules Ends,
    ImmutableArray<Place> WidthsAt
)
{
    /// <summary>Where the job has it.</summary>
    public required Place At { get; init; }
}
