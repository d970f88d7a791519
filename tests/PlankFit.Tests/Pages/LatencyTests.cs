using System.Globalization;
using System.Text.Json;
using PlankFit.Pages.Serving;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>
/// From a change to the pixels, in a real browser: no test is about how long anything takes, so that this measures where PLANKFIT_LATENCY=N asks for N changes, writes down what it
/// found, and holds nothing.
/// </summary>
public sealed class LatencyTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>The width of the outer skin turned a tenth of a millimetre at a time: until the picture of its planks stands, and until all is known of them.</summary>
    [Fact]
    public async Task AChangeOfTheLaunchComesToThePixels()
    {
        if (
            !int.TryParse(
                Environment.GetEnvironmentVariable("PLANKFIT_LATENCY"),
                CultureInfo.InvariantCulture,
                out int changes
            ) || !RoomFiles.Has(RoomRoutes.Solid)
        )
        {
            return;
        }

        // The program as it is shipped, in a process of its own, where it is served already.
        string? at = Environment.GetEnvironmentVariable("PLANKFIT_LATENCY_AT");
        await using ServedJob? served = at is null ? await ServedJob.Of("survey-launch") : null;
        await using OpenPage open = await browser.Open(
            served?.Address ?? new(at!),
            1280,
            800,
            solid: true
        );
        await open.Laid();
        await Expect(open.Page.Locator(".sheet")).ToHaveAttributeAsync("data-turn", "1");
        JsonElement found = await open.Page.EvaluateAsync<JsonElement>(
            """
            async changes => {
              const { shop } = await import("/rooms/frame/shop.js");
              const sheet = document.querySelector(".sheet"), times = [];
              const until = async done => { while (!done()) await new Promise(r => setTimeout(r, 1)); };
              const pixels = () => new Promise(r => requestAnimationFrame(() => requestAnimationFrame(r)));
              for (let i = 0; i < changes; i++) {
                const from = performance.now();
                const answer = await fetch("wish", { method: "POST", headers: { "Content-Type": "application/json", "X-PlankFit": "1" },
                  body: JSON.stringify({ address: "layer[2].width", typed: (124.9 - (i % 40) / 10).toFixed(1) }) });
                const { turn } = await answer.json(), posted = performance.now();
                await until(() => Number(sheet.dataset.turn) >= turn);
                const drawn = performance.now();
                await pixels();
                const planks = performance.now();
                await until(() => shop.facts.turn >= turn);
                await pixels();
                const of = name => performance.getEntriesByType("resource").findLast(e => e.name.includes(`${name}/${turn}`));
                const [skins, bodies] = [of("skins"), of("planks")];
                const since = time => (time ?? NaN) - from;
                times.push([posted - from, since(skins?.startTime), since(skins?.responseStart), since(bodies?.startTime), since(bodies?.responseStart), since(bodies?.responseEnd), drawn - from, planks - from, performance.now() - from]);
                performance.clearResourceTimings();
                // A hand that types; what follows the facts is over by then.
                await new Promise(r => setTimeout(r, 250));
              }
              return times;
            }
            """,
            changes
        );
        double[][] times =
        [
            .. found
                .EnumerateArray()
                .Select(t => t.EnumerateArray().Select(v => v.GetDouble()).ToArray()),
        ];
        foreach (
            (string what, int i) in new[]
            {
                ("posted", 0),
                ("which planks: asked for", 1),
                ("which planks: answered", 2),
                ("bodies: asked for", 3),
                ("bodies: answered", 4),
                ("bodies: there", 5),
                ("planks: drawn", 6),
                ("planks: to be seen", 7),
                ("all", 8),
            }
        )
        {
            double[] sorted = [.. times.Select(t => t[i]).Order()];
            TestContext.Current.TestOutputHelper!.WriteLine(
                $"{what}: least {sorted[0]:0} ms, half {sorted[sorted.Length / 2]:0} ms, 95 of 100 {sorted[(int)(0.95 * (sorted.Length - 1))]:0} ms, most {sorted[^1]:0} ms"
            );
        }
    }
}
