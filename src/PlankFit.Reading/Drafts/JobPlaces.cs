using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Drafts;

/// <summary>Where a job file says what may turn out to be wrong once it is held against its table.</summary>
/// <param name="ByKey">Of keys in tables that are there once, with the tables that they lie in: "as-built.from".</param>
/// <param name="OfLayers">Of the keys of a layer, by its name; the table's head where it has no key.</param>
public sealed record JobPlaces(
    ImmutableDictionary<string, Place> ByKey,
    ImmutableDictionary<(string Layer, string? Key), Place> OfLayers
)
{
    public static readonly JobPlaces None = new(
        ImmutableDictionary<string, Place>.Empty,
        ImmutableDictionary<(string, string?), Place>.Empty
    );

    /// <summary>The finding with file, line and column of the key that it asks to be looked at, where there is one.</summary>
    public Finding Placed(Finding finding) =>
        Of(finding) is { } place ? finding with { About = $"{place} ({finding.Where})" } : finding;

    private Place? Of(Finding finding)
    {
        if (finding.About.Key is not { } key)
        {
            return null;
        }

        if (finding.About.Layer is not { } layer)
        {
            return ByKey.TryGetValue(key, out Place at) ? at : null;
        }

        return
            OfLayers.TryGetValue((layer, key), out Place own)
            || OfLayers.TryGetValue((layer, null), out own)
            ? own
            : null;
    }
}
