using Compat.Curation.Writing;

namespace Compat.Curation.Editing;

/// <summary>The text a new site file starts with: it passes as it stands, and its comments say what to write where.</summary>
public static class SiteStart
{
    /// <summary>The text.</summary>
    /// <param name="id">The id of the site.</param>
    /// <param name="name">What it is called.</param>
    public static string Text(SiteId id, string name) => $$"""
        # The file of one site: its shelf, its devices, what is at hand there. Every line behind a # is a comment.
        # Fill it by `compat site add-product` and `compat site import`, or by hand: take the # away and change what stands there.
        # `compat format` brings it into the usual form; every command that takes --site FILE checks it first.
        site:
          id: {{id.Value}}
          name: {{RecordText.Quoted(name)}}

        # What is at hand. A step that needs what is not there is not in a plan; what is left out was not stated.
        # here:
        #   temperature: "18..26 °C"
        #   hardness: 120..180 mg/L CaCO3
        #   water: [running, purified]
        #   cloths: [microfibre, cotton]
        #   gloves: [nitrile]
        #   drying-air: false

        # One record for each bottle, tub or concentrate on the shelf, from its label and sections 1, 3 and 9 of its safety data sheet.
        # Name under `shown-by` the tests that the label names; `compat list tests` says what each shows. Of a registration alone write `registration: { authority, number }`.
        # Write the ranges as they stand there; what the sheet does not say stays out: it is never guessed kindly.
        # products:
        #   - id: plain-spirit-wipe
        #     name: plain spirit wipe
        #     composition: declared-hazardous-only
        #     strength-of: liquid
        #     ingredients:
        #       - { agent: isopropanol, strength: "60..70 % v/v" }
        #     methods: [damp-wipe, wet-wipe]
        #     label-claims:
        #       - id: low
        #         when: { contact-time: ">= 1 min", temperature: "15..30 °C", methods: [damp-wipe, wet-wipe] }
        #         reaches: low
        #         shown-by: [EN 13727, EN 14476, EN 16615]

        # One record for each kind of device; `compat list parts` and `compat find screen` show the types of parts.
        # devices:
        #   - id: infusion-pump
        #     name: infusion pump
        #     parts:
        #       - { id: keypad, type: keypad-membrane }
        #       - { id: housing, type: housing-plastic, touched-by: hand }
        """ + "\n";
}
