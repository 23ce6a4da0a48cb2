import { predictLayers } from '#assemblies/predict.ts'
import { rateAll } from '#acoustics/rating.ts'
const b:any={kind:'board',material:'gypsum-type-x',thicknessMm:12.7}, k:any={kind:'board',material:'concrete-block-hollow',thicknessMm:190}
const rc:any={kind:'resilient-channel',frame:'masonry',channelSpacingMm:600}
const c=(d:number,f:number,link:any)=>({kind:'cavity',depthMm:d,...(f?{fill:'mineral-wool',fillMm:f}:{}),link}) as any
for (const [n,l] of Object.entries({bare:[k],rc50both:[b,c(50,50,rc),k,c(50,50,rc),b],none50both:[b,c(50,50,{kind:'none'}),k,c(50,50,{kind:'none'}),b],rc50one:[k,c(50,50,rc),b],rc13one:[k,c(13,13,rc),b],rc13both:[b,c(13,0,rc),k,c(13,0,rc),b], wood38both:[b,c(38,38,{kind:'wood-stud',spacingMm:600}),k,c(38,38,{kind:'wood-stud',spacingMm:600}),b]})) {
 const p=predictLayers(l as any,'plot'); if(!p.ok) continue
 console.log(n, rateAll(p.value.physicsLossDb).stc, p.value.physicsLossDb.map(x=>x.toFixed(0)).join(' '), p.value.notes.map(n=>n.code).join())
}
