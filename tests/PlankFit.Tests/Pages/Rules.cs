using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.Tests.Architecture;

namespace PlankFit.Tests.Pages;

/// <summary>axe-core, a rule book of the web's guidelines (WCAG 2.2 A and AA among its tags), held against a page as it stands.</summary>
internal static class Rules
{
    private static string Axe =>
        Path.Combine(
            HouseRules.Root(),
            "src",
            "PlankFit.Page",
            "obj",
            "solid",
            "node_modules",
            "axe-core",
            "axe.min.js"
        );

    /// <summary>A test that is about nothing else is skipped where it is not there.</summary>
    public static void SkipUnlessThere() =>
        Assert.SkipUnless(
            File.Exists(Axe),
            "axe-core is not here: build where there is Node (apt-get install nodejs npm)"
        );

    /// <summary>No rule is broken; nothing is asked where axe is not there.</summary>
    /// <param name="where">Told if one is.</param>
    public static async Task Hold(IPage page, string where)
    {
        if (!File.Exists(Axe))
        {
            return;
        }

        // The policy refuses a script that is added; what the debugger evaluates is not the page's.
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(await File.ReadAllTextAsync(Axe, ServedJob.Stop));
        }

        JsonElement broken = await page.EvaluateAsync<JsonElement>(
            "async () => (await axe.run()).violations.map(v => `${v.id} (${v.impact}): ${v.nodes.map(n => n.html.slice(0, 160)).slice(0, 4).join(' | ')}`)"
        );
        Assert.True(broken.GetArrayLength() == 0, $"{where}: {broken}");
    }

    /// <summary>The same, and nothing runs out sideways; where PLANKFIT_SHOTS names a folder, a picture is left there, to be looked at.</summary>
    /// <param name="name">Of the picture, before its width.</param>
    public static async Task Look(IPage page, string name, int width)
    {
        await Hold(page, $"{name}, {width}");
        Assert.True(
            await page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= window.innerWidth"
            ),
            $"{name}, {width}: runs out sideways"
        );
        if (Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is { } folder)
        {
            await page.ScreenshotAsync(
                new() { Path = Path.Combine(folder, $"{name}-{width}.png"), FullPage = true }
            );
        }
    }
}
